package verdict

import (
	"encoding/json"
	"sync"

	"lintel/quiz"
)

// remembered is how many scenes are held (chosen by us): those that a few classes
// are at, since a whole class answers the same one.
const remembered = 64

// scorer scores answers to one scene.
type scorer = func(quiz.Answer) (quiz.Verdict, error)

// Remember returns a scorer of answers to any scene, which works out a scene once
// for all who answer it about the same time.
func Remember(workOut func(quiz.Scene) (scorer, error)) scorer {
	var mu sync.Mutex
	held := map[string]scorer{}
	var order []string
	return func(a quiz.Answer) (quiz.Verdict, error) {
		mu.Lock()
		defer mu.Unlock()
		scene := a.Scene()
		name, err := json.Marshal(scene)
		if err != nil {
			return quiz.Verdict{}, err
		}
		known, ok := held[string(name)]
		if !ok {
			if known, err = workOut(scene); err != nil {
				return quiz.Verdict{}, err
			}
			if order = append(order, string(name)); len(order) > remembered {
				delete(held, order[0])
				order = order[1:]
			}
			held[string(name)] = known
		}
		return known(a)
	}
}
