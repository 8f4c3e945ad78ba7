package content_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"lintel/content"
	"lintel/engine"
	"lintel/quiz"
)

// confusable is every pair that a person can take for one another: any two stages,
// the regimes, any two ways of flow, and neighbouring levels of each cue.
func confusable() []quiz.Contrast {
	list := []quiz.Contrast{{Regimes: engine.Regimes}}
	stages := engine.Stages[:len(engine.Stages)-1] // undetermined is no truth
	for i, stage := range stages {
		for _, other := range stages[i+1:] {
			list = append(list, quiz.Contrast{Stages: []engine.Stage{stage, other}})
		}
	}
	for i, flow := range engine.Flows {
		for _, other := range engine.Flows[i+1:] {
			list = append(list, quiz.Contrast{Flows: []engine.Flow{flow, other}})
		}
	}
	for _, cue := range engine.OrdinalCues {
		for level := range engine.TopLevel {
			list = append(list, quiz.Contrast{Cue: cue, Levels: []int{level, level + 1}})
		}
	}
	return list
}

// spellPair names a contrast, the same whichever way round.
func spellPair(c *quiz.Contrast) string {
	var sides []string
	for _, side := range sidesOf(c) {
		sides = append(sides, fmt.Sprint(side))
	}
	slices.Sort(sides)
	return strings.TrimSpace(string(c.Cue) + " " + strings.Join(sides, " / "))
}

// pairFamilies lists, by pair, the families that can show it.
func pairFamilies() table {
	covered := table{}
	for _, f := range content.Families() {
		for i := range f.Pairs {
			covered.add("pair "+spellPair(&f.Pairs[i]), f.ID)
		}
	}
	return covered
}

// Whatever a person confuses, some family sets it apart.
func TestEveryConfusionHasItsPair(t *testing.T) {
	covered := pairFamilies()
	for _, pair := range confusable() {
		assert.NotEmpty(t, covered["pair "+spellPair(&pair)], spellPair(&pair))
	}
	assert.Empty(t, covered["pair "+spellPair(&quiz.Contrast{Flows: []engine.Flow{"in", "up"}})], "what is no pair has none")
}

// And the families do find their pairs: of three seeds at least one.
func TestPairsAreFound(t *testing.T) {
	if testing.Short() {
		t.Skip("lets some hundred fires burn")
	}
	for _, f := range content.Families() {
		for i := range f.Pairs {
			t.Run(f.ID+" "+spellPair(&f.Pairs[i]), func(t *testing.T) {
				for seed := range uint64(3) {
					made, _, err := content.MakeScene(quiz.Scene{Family: f.ID, Seed: 40 + seed, Contrast: &f.Pairs[i]})
					if err == nil {
						assert.Equal(t, &f.Pairs[i], made.Contrast)
						return
					}
				}
				assert.Fail(t, "no scene of three seeds")
			})
		}
	}
}
