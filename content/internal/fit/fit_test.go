package main

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/content"
	"lintel/content/internal/measured"
	"lintel/engine"
	"lintel/engine/infer"
	"lintel/engine/sim"
)

// Every drawn fire must be one that the engine accepts, or the sample is skewed.
func TestEveryDrawnFireIsValid(t *testing.T) {
	for seed := range uint64(300) {
		sc := draw(seed)
		require.NoError(t, sc.Validate(), "seed %d", seed)
		if seed < 20 {
			_, err := sim.New(sc, content.Library())
			require.NoError(t, err, "seed %d", seed)
		}
	}
}

// A weight that made the data must come back: one rule doubles the odds of an
// event by e^1.2, the other says nothing of it.
func TestTheFitFindsTheWeightThatMadeTheData(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 1))
	const weight, bias = 1.2, -0.7
	var s sample
	for i := range 4000 {
		e, z := example{moment: i}, bias
		if rng.IntN(2) == 0 {
			e.rules, z = append(e.rules, 0), z+weight
		}
		if rng.IntN(2) == 0 {
			e.rules = append(e.rules, 1)
		}
		m := moment{}
		m.Hazards[0] = rng.Float64() < 1/(1+math.Exp(-z))
		s.moments, s.examples = append(s.moments, m), append(s.examples, e)
	}
	rules := []infer.Rule{
		{Confidence: infer.Low, Hazards: []engine.Hazard{engine.Flashover}},
		{Confidence: infer.Low, Hazards: []engine.Hazard{engine.Flashover}},
	}
	h := newHead(rules, 2, func(_ *infer.Rule, class int) claim { return claim{float64(class), true} })
	h.fit(s, func(m *moment) int {
		if m.Hazards[0] {
			return 1
		}
		return 0
	})
	assert.InDelta(t, weight, h.weight[0][1], 0.15)
	assert.InDelta(t, 0, h.weight[1][1], 0.1)
	assert.InDelta(t, bias, h.bias[1]-h.bias[0], 0.15)
}

// A rule never ends up speaking against what it claims.
func TestWeightsKeepTheirSide(t *testing.T) {
	h := head{
		weight: [][]float64{{-0.5, 0.5, 0.3, -0.1}},
		start:  [][]float64{{0, 1, 0, -0.6}},
		sign:   [][]float64{{1, 1, 0, -1}},
		keep:   0.5,
	}
	h.bound()
	assert.Equal(t, []float64{0, 0.5, 0, -0.3}, h.weight[0], "and what it keeps of the trade's")
	h.weight[0][2], h.lean = 0.9, 0.4
	h.bound()
	assert.Equal(t, []float64{0, 0.5, 0.4, -0.3}, h.weight[0], "where it claims nothing it leans a little")
	h.sign[0], h.start[0], h.weight[0] = []float64{0, -1, 0, 0}, make([]float64, 4), []float64{0.9, 0, 0, 0}
	h.bound()
	assert.Equal(t, make([]float64, 4), h.weight[0], "and not where it speaks for nothing")
}

func TestTheThresholdPartsBest(t *testing.T) {
	list := []chance{{0.9, true}, {0.8, true}, {0.7, false}, {0.6, true}, {0.3, false}, {0.2, false}, {0.1, false}}
	assert.InDelta(t, 0.6, threshold(list), 1e-9, "3 of 3 hits against 1 of 4 alarms is the widest gap")
}

// Of cuts that chance alone tells apart the one that misses least is taken, and not
// one that is clearly worse.
func TestTheThresholdMissesLeastOfEquals(t *testing.T) {
	var list []chance
	add := func(p float64, with, without int) {
		list = append(list, slices.Repeat([]chance{{p, true}}, with)...)
		list = append(list, slices.Repeat([]chance{{p, false}}, without)...)
	}
	add(0.5, 6, 2) // 0.6 less 0.1, give or take 0.17
	add(0.3, 1, 3) // 0.7 less 0.25
	add(0.1, 1, 11)
	add(0, 2, 4)
	assert.InDelta(t, 0.3, threshold(list), 1e-9)
	assert.InDelta(t, 0.5, threshold(slices.Repeat(list, 40)), 1e-9, "with 40 times as many the best is no chance")
}

// What an authority lists outright keeps more of its weight.
func TestASureSignKeepsMore(t *testing.T) {
	h := head{keep: 0.05, sure: 0.2}
	assert.InDelta(t, 0.2*startWeights[infer.High], h.kept(startWeights[infer.High]), 1e-9)
	assert.InDelta(t, 0.05*startWeights[infer.Middle], h.kept(startWeights[infer.Middle]), 1e-9)
	h.sure = 0
	assert.InDelta(t, 0.05*startWeights[infer.High], h.kept(startWeights[infer.High]), 1e-9)
}

// A cut at which a flag is raised nearly as often without is taken only where no other
// tells more.
func TestTheThresholdTells(t *testing.T) {
	var list []chance
	add := func(p float64, with, without int) {
		list = append(list, slices.Repeat([]chance{{p, true}}, with)...)
		list = append(list, slices.Repeat([]chance{{p, false}}, without)...)
	}
	add(0.5, 5, 2)  // 0.5 against 0.1
	add(0.3, 4, 11) // 0.9 against 0.65: nearly as good a gain, and a flag that tells less
	add(0, 1, 7)
	assert.InDelta(t, 0.5, threshold(list), 1e-9)
	assert.InDelta(t, 0.3, threshold(list[7:]), 1e-9, "where nothing tells, what parts best")
}

// Where a fire burns from wall to wall, flashover is no question; other hazards are.
func TestFlashoverIsNoQuestionOnceItIsPast(t *testing.T) {
	past, ahead := moment{Stage: engine.FullyDeveloped}, moment{Stage: engine.Growth}
	for h, hazard := range engine.Hazards {
		assert.Equal(t, hazard != engine.Flashover, past.asks(h), hazard)
		assert.True(t, ahead.asks(h), hazard)
	}
	s := sample{moments: []moment{past, ahead}, examples: []example{{moment: 0}, {moment: 1}}}
	assert.Equal(t, []example{{moment: 1}}, s.asking(indexOf(engine.Hazards, engine.Flashover)).examples)
	assert.Len(t, s.asking(indexOf(engine.Hazards, engine.Backdraft)).examples, 2)
}

// A moment before flashover counts for more than another.
func TestBeforeFlashoverIsDear(t *testing.T) {
	s := sample{moments: []moment{{Stage: engine.Growth}, {Stage: engine.PreFlashover}}}
	for i := range 80 {
		s.examples = append(s.examples, example{moment: i % 4 / 3})
	}
	class := func(m *moment) int { return indexOf([]engine.Stage{engine.Growth, engine.PreFlashover}, m.Stage) }
	plain, dear := newHead(nil, 2, stageClaim), newHead(nil, 2, stageClaim)
	dear.dear = 1
	plain.fit(s, class)
	dear.fit(s, class)
	assert.InDelta(t, math.Log(1.0/3), plain.bias[1]-plain.bias[0], 0.02, "one in four")
	assert.InDelta(t, math.Log(dearPreFlashover/3.0), dear.bias[1]-dear.bias[0], 0.02)
}

// A hazard is never flagged without a condition seen, so what shows none must not
// draw the threshold down to it.
func TestTheThresholdPartsWhatCanBeFlagged(t *testing.T) {
	seen := func(p float64) engine.HazardFinding { return engine.HazardFinding{Probability: p, Flagged: true} }
	unseen := func(p float64) engine.HazardFinding { return engine.HazardFinding{Probability: p} }
	with := []engine.HazardFinding{seen(0.3), seen(0.3), unseen(0.1), unseen(0.1), unseen(0.1), unseen(0.1)}
	without := []engine.HazardFinding{seen(0.2), unseen(0.05), unseen(0.05), unseen(0.05)}
	var list, bare []chance
	for _, h := range with {
		list, bare = append(list, chance{seenFor(h), true}), append(bare, chance{h.Probability, true})
	}
	for _, h := range without {
		list, bare = append(list, chance{seenFor(h), false}), append(bare, chance{h.Probability, false})
	}
	assert.InDelta(t, 0.3, threshold(list), 1e-9)
	assert.InDelta(t, 0.1, threshold(bare), 1e-9, "as it would without asking what was seen")
}

// What people see keeps every rating within the scale and invents no opening.
func TestAsSeenBlursOnly(t *testing.T) {
	rng := rand.New(rand.NewPCG(2, 2))
	exact := engine.Readings{V: 1, Looks: []engine.Look{
		{Openings: []engine.Reading{{ID: "a", Volume: new(0), Velocity: new(4)}}},
		{Openings: []engine.Reading{{ID: "a", Volume: new(0), Velocity: new(4)}, {ID: "b", Density: new(2)}}},
	}}
	missed := 0
	for range 500 {
		seen := asSeen(exact, rng)
		require.NotEmpty(t, seen.Looks)
		require.NoError(t, seen.Validate())
		last := seen.Looks[len(seen.Looks)-1]
		require.LessOrEqual(t, len(last.Openings), 2)
		for _, o := range last.Openings {
			if o.ID == "a" && o.Velocity == nil {
				missed++
			}
		}
	}
	assert.InDelta(t, 500*(1-missOpening)*missCue, missed, 40)
	assert.Equal(t, 4, *exact.Looks[1].Openings[0].Velocity, "the exact readings are left whole")
}

// The shares that are printed beside each rule are those that were counted.
func TestShares(t *testing.T) {
	nothing := [][]float64{make([]float64, len(trueStages))}
	m := model{stage: head{weight: nothing, sign: nothing}, regime: head{weight: [][]float64{{0, 0}}}}
	for h := range m.hazard {
		m.hazard[h].weight = [][]float64{{0, 0}}
	}
	s := sample{
		moments:  []moment{{Stage: engine.Growth}, {Stage: engine.Decay}, {Stage: engine.Growth}, {Stage: engine.Growth}},
		examples: []example{{moment: 0, exact: true, rules: []int{0}}, {moment: 1, exact: true, rules: []int{0}}, {moment: 2, exact: true}, {moment: 3, rules: []int{0}}},
	}
	got := m.rule(&infer.Rule{ID: "r", Supports: []engine.Stage{engine.Growth}}, 0, s)
	assert.Equal(t, measured.Rule{
		Rule: "r", Claim: "the stage is one that it supports", Fires: 2, Hits: 1, Share: 0.5, Base: 0.667,
		Stage: map[engine.Stage]float64{}, Hazards: map[engine.Hazard]float64{},
	}, got)
}

// Where fires say nothing of a rule, its weight is the share of the trade's that
// the fit is tied to.
func TestAnUnseenRuleKeepsTheShareItIsTiedTo(t *testing.T) {
	for _, pull := range []float64{1, 0.3} {
		h := newHead([]infer.Rule{{Confidence: infer.Middle, Supports: []engine.Stage{engine.Growth}}}, len(trueStages), stageClaim)
		h.pull, h.keep = pull, 0.03
		h.fit(sample{moments: []moment{{Stage: engine.Decay}}, examples: []example{{}}}, func(*moment) int { return 0 })
		assert.InDelta(t, pull, h.weight[0][indexOf(trueStages, engine.Growth)], 0.01)
	}
}

// The least covering probability holds the share asked for and not one moment less.
func TestCoverHoldsItsShare(t *testing.T) {
	need := []float64{0, 0, 0, 0, 0.1, 0.3, 0.5, 0.6, 0.8, 0.9}
	for _, share := range []float64{0.5, 0.7, 0.9} {
		cover, held := coverFor(need, share), 0
		for _, n := range need {
			if n <= cover {
				held++
			}
		}
		assert.GreaterOrEqual(t, float64(held)/10, share)
		assert.LessOrEqual(t, held, int(10*share)+1)
	}
}

// What the set holds whatever it must cover needs no cover; else it is what lies
// above the truth.
func TestWhatATruthNeeds(t *testing.T) {
	f := engine.Finding{
		Stage: map[engine.Stage]float64{engine.Growth: 0.6, engine.Decay: 0.3, engine.PreFlashover: 0.1},
		Set:   []engine.Stage{engine.Growth, engine.PreFlashover},
	}
	assert.Zero(t, likelier(f, engine.PreFlashover))
	assert.InDelta(t, 0.6, likelier(f, engine.Decay), 1e-9)
}

// Every stage counts alike in the mean over the stages.
func TestTheMeanOverTheStages(t *testing.T) {
	var tally tally
	for range 9 {
		tally.called(engine.Growth, engine.Growth)
	}
	tally.called(engine.Growth, engine.Decay)
	assert.Equal(t, 9, tally.top)
	assert.InDelta(t, 1.0/7, tally.even(), 1e-9)
}

// A rule that fits a fire short of air lowers no hazard; one that fits only a fire
// dying down may.
func TestAStarvedFireLowersNoHazard(t *testing.T) {
	dying := infer.Rule{When: []string{"volume change <= -1"}, Supports: []engine.Stage{engine.Decay}}
	assert.Equal(t, claim{-1, false}, hazardClaim(&dying, engine.Backdraft, 1))
	dying.Supports = append(dying.Supports, engine.VentilationDecay)
	assert.Equal(t, silent, hazardClaim(&dying, engine.Backdraft, 1))
	assert.Equal(t, claim{-1, false}, hazardClaim(&dying, engine.Flashover, 1), "what comes with air is another hazard")
}

// Conditions that came up lately still count when something else was told after
// them; older ones, and events that are over, do not.
func TestWhatLiesAhead(t *testing.T) {
	events := []engine.Event{
		{TS: 10, Kind: "backdraft_conditions"},
		{TS: 100, Kind: "flashover"},
		{TS: 150, Kind: "smoke_explosion_conditions"},
		{TS: 155, Kind: "extinction"},
		{TS: 190, Kind: "ventilation_induced_flashover"},
	}
	var found [4]bool
	mark(&found, events, 4, 120)
	for h, hazard := range engine.Hazards {
		want := hazard == engine.SmokeExplosion || hazard == engine.VentilationFlashover
		assert.Equal(t, want, found[h], hazard)
	}
}
