package session

import (
	"lintel/quiz"
	"lintel/quiz/score"
)

// Sureness sets how sure a person was beside how often that came true, over the
// answers of a class that were given with a confidence.
type Sureness struct {
	N     int     `json:"n"`
	Said  float64 `json:"said"`  // mean confidence
	Right float64 `json:"right"` // share right
}

// sureness is nil where nothing was answered with a confidence.
func sureness(answers []PersonAnswer) *Sureness {
	var sum Sureness
	for i := range answers {
		came, sure := score.Came(choices(answers[i].Parts))
		if !sure || answers[i].Confidence == nil {
			continue
		}
		sum.N++
		sum.Said += *answers[i].Confidence
		if came {
			sum.Right++
		}
	}
	if sum.N == 0 {
		return nil
	}
	sum.Said /= float64(sum.N)
	sum.Right /= float64(sum.N)
	return &sum
}

// choices are the parts of an answer as the scores take them, less what an
// instructor disagrees with.
func choices(parts []PersonPart) []quiz.Part {
	var list []quiz.Part
	for i := range parts {
		if p := &parts[i]; !p.Doubted {
			list = append(list, quiz.Part{Ask: p.Ask, Kind: p.Kind, Given: p.Given, Right: p.Right})
		}
	}
	return list
}
