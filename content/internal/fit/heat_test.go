package main

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/content"
	"lintel/engine"
	"lintel/engine/infer"
)

// Whatever the fires say, a rule that asks for strong heat never speaks more for a
// fire dying down than for one before flashover (NFCC, Understand signs and
// symptoms of flashover, indicator table).
func TestHeatNeverSpeaksForDecay(t *testing.T) {
	rules := content.RuleList()
	decay, before := indexOf(trueStages, engine.Decay), indexOf(trueStages, engine.PreFlashover)
	h := newHead(rules, len(trueStages), stageClaim)
	h.under = heatOrder(rules)
	require.NotEmpty(t, h.under)
	for i := range rules {
		h.weight[i][decay] = 3
	}
	h.bound()
	for _, o := range h.under {
		assert.LessOrEqual(t, h.weight[o.rule][decay], h.weight[o.rule][before], rules[o.rule].ID)
	}
}

// Fierce smoke may raise a rapid event and never lowers one; flame that fills an
// opening may, for it shows a flashover that is past.
func TestFierceSmokeLowersNoHazard(t *testing.T) {
	fast := infer.Rule{When: []string{"velocity >= 3"}, Supports: []engine.Stage{engine.FullyDeveloped}}
	full := infer.Rule{When: []string{"flame is full"}, Supports: []engine.Stage{engine.FullyDeveloped}}
	assert.Equal(t, silent, hazardClaim(&fast, engine.Flashover, 1))
	assert.Equal(t, claim{-1, false}, hazardClaim(&full, engine.Flashover, 1))
	fast.Hazards = []engine.Hazard{engine.Flashover}
	assert.Equal(t, claim{1, true}, hazardClaim(&fast, engine.Flashover, 1))
}

// An even head learns nothing from how many moments of a kind there were.
func TestAnEvenHeadFavoursNoClass(t *testing.T) {
	s := sample{moments: []moment{{Stage: engine.Growth}, {Stage: engine.Decay}}}
	for i := range 100 {
		s.examples = append(s.examples, example{moment: min(i/90, 1), rules: []int{}})
	}
	class := func(m *moment) int { return indexOf([]engine.Stage{engine.Growth, engine.Decay}, m.Stage) }
	even := newHead(nil, 2, stageClaim)
	even.even = true
	even.fit(s, class)
	assert.Equal(t, []float64{0, 0}, even.bias)
	led := newHead(nil, 2, stageClaim)
	led.fit(s, class)
	assert.Greater(t, led.bias[0], led.bias[1]+1, "as a head with a bias does")
}
