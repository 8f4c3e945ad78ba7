package item

import (
	"math/rand/v2"
	"slices"

	"lintel/engine"
	"lintel/quiz"
)

// share is how many scenes of each kind a test form has: 21, with about forty
// questions. Chosen by us: a form takes about a quarter of an hour.
var share = []struct {
	kind  quiz.ItemKind
	count int
}{
	{quiz.ReadOpening, 4}, {quiz.FlowPlane, 3}, {quiz.NearestSeat, 2}, {quiz.CallStage, 4},
	{quiz.PredictMove, 2}, {quiz.TwoLooks, 2}, {quiz.WhichOfTwo, 2}, {quiz.CallOut, 2},
}

// formBits is how much of a seed is drawn: the bits above it say that the seed is a
// test's and of which form it is, so no scene is in two forms or in any drill.
const formBits = 48

// Form lists the scenes of one test form for one person. A person's three forms ask
// the same families in the same order, each with scenes of its own drawn from the
// same ranges: they are alike in difficulty, and unlike in every scene.
func Form(families []Family, kind quiz.FormKind, person string) ([]quiz.Scene, error) {
	form := slices.Index(quiz.FormKinds, kind)
	if form < 0 {
		return nil, engine.Bad("form", "is "+string(kind)+", which is none", "use "+engine.OneOf(quiz.FormKinds))
	}
	draw := rand.New(rand.NewPCG(hash(person), hash("form")))
	var ids []string
	for _, s := range share {
		ids = append(ids, some(families, s.kind, s.count, draw)...)
	}
	draw.Shuffle(len(ids), func(i, j int) { ids[i], ids[j] = ids[j], ids[i] })
	scenes := make([]quiz.Scene, len(ids))
	for i, id := range ids {
		own := hash(person+"\n"+string(kind)+"\n"+id) & (1<<formBits - 1)
		scenes[i] = quiz.Scene{Family: id, Seed: quiz.FirstTestSeed | uint64(form)<<formBits | own}
	}
	return scenes, nil
}

// some draws families of a kind, each once; fewer where there are no more.
func some(families []Family, kind quiz.ItemKind, count int, draw *rand.Rand) []string {
	var ids []string
	for i := range families {
		if families[i].Kind == kind {
			ids = append(ids, families[i].ID)
		}
	}
	draw.Shuffle(len(ids), func(i, j int) { ids[i], ids[j] = ids[j], ids[i] })
	return ids[:min(count, len(ids))]
}
