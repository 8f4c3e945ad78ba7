package infer

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/engine"
)

func TestNothingSeenLeavesEverythingOpen(t *testing.T) {
	finding := Read(smallSet(t, Priors{}), engine.Readings{V: 1, Looks: []engine.Look{{}}})
	assert.InDelta(t, 1, finding.Stage[engine.Undetermined], 1e-9)
	assert.InDelta(t, 0.5, finding.Regime[engine.FuelLimited], 1e-9)
	assert.Len(t, finding.Set, stageCount)
	assert.Empty(t, finding.Because)
	assert.Empty(t, finding.Path)
	assert.Equal(t, noFlowNote, finding.PathNote)
	for _, hazard := range finding.Hazards {
		assert.False(t, hazard.Flagged)
		assert.NotEmpty(t, hazard.Conditions)
	}
}

func TestMoreEvidenceLeavesLessUndetermined(t *testing.T) {
	set := smallSet(t, Priors{})
	one := Read(set, look(engine.Reading{ID: "a", Velocity: new(4)}))
	two := Read(set, look(engine.Reading{ID: "a", Velocity: new(4), Pulsing: new(true)}))
	windy := look(engine.Reading{ID: "a", Velocity: new(4)})
	windy.Looks[0].Wind = &engine.Wind{MS: new(6.0)}
	assert.Less(t, two.Stage[engine.Undetermined], one.Stage[engine.Undetermined])
	assert.Greater(t, Read(set, windy).Stage[engine.Undetermined], one.Stage[engine.Undetermined])
}

// A sign against one stage leaves six: it names none of them.
func TestASignAgainstOneStageNamesNoOther(t *testing.T) {
	against := Rule{ID: "against", At: AtBuilding, When: []string{"not water"}, Confidence: High, Opposes: []engine.Stage{engine.AfterKnockDown}, Sources: []string{"x"}}
	for _, tells := range []bool{false, true} {
		if tells {
			against.Supports = []engine.Stage{engine.Growth}
		}
		set, err := NewSet([]Rule{against}, nil, Priors{Cover: 0.95})
		require.NoError(t, err)
		finding := Read(set, engine.Readings{V: 1, Looks: []engine.Look{{Water: new(false)}}})
		most := finding.Stage[engine.Undetermined]
		for _, stage := range TrueStages {
			most = max(most, finding.Stage[stage])
		}
		assert.Equal(t, !tells, most == finding.Stage[engine.Undetermined])
	}
}

func TestTheSetHoldsWhatSourcesDoNotTellApart(t *testing.T) {
	set := smallSet(t, Priors{Cover: 0.1})
	finding := Read(set, look(engine.Reading{ID: "a", Volume: new(1)}))
	assert.Equal(t, []engine.Stage{engine.Incipient, engine.VentilationDecay}, finding.Set)
}

func TestReasonsGiveWeightAndSource(t *testing.T) {
	finding := Read(smallSet(t, Priors{}), look(engine.Reading{ID: "a", Velocity: new(4), Volume: new(1)}))
	require.NotEmpty(t, finding.Because)
	assert.Equal(t, "fast", finding.Because[0].Rule)
	assert.Equal(t, "rule/fast/source", finding.Because[0].Source)
	assert.Positive(t, finding.Because[0].Weight)
	assert.Equal(t, string(engine.PreFlashover), finding.Because[0].For)
	require.NotEmpty(t, finding.Against)
	assert.Equal(t, "wisps", finding.Against[0].Rule)
	assert.Negative(t, finding.Against[0].Weight)
}

// A hazard is flagged by a condition that was seen, never by what fires usually
// do alone.
func TestNoHazardIsFlaggedUnseen(t *testing.T) {
	set := smallSet(t, Priors{Hazard: [hazardCount]float64{3}})
	finding := Read(set, look(engine.Reading{ID: "a", Volume: new(2)}))
	assert.False(t, finding.Hazards[0].Flagged)
	finding = Read(set, look(engine.Reading{ID: "a", Velocity: new(4)}))
	assert.True(t, finding.Hazards[0].Flagged)
	assert.Equal(t, []string{"fast"}, finding.Hazards[0].Conditions)
}

func TestTrendIsBetterOnlyWithWater(t *testing.T) {
	set := smallSet(t, Priors{})
	fall := engine.Readings{V: 1, Looks: []engine.Look{
		{Openings: []engine.Reading{{ID: "a", Velocity: new(4), Volume: new(4)}}},
		{Openings: []engine.Reading{{ID: "a", Velocity: new(2), Volume: new(2)}}},
	}}
	assert.Empty(t, Read(set, fall).Trend)
	fall.Looks[1].Water = new(true)
	assert.Equal(t, Better, Read(set, fall).Trend)
	fall.Looks[0], fall.Looks[1] = fall.Looks[1], fall.Looks[0]
	assert.Equal(t, Worse, Read(set, fall).Trend)
	assert.Empty(t, Read(set, look(engine.Reading{ID: "a", Velocity: new(2)})).Trend)
}

func TestFiredAtNamesTheOpenings(t *testing.T) {
	set := smallSet(t, Priors{})
	r := look(engine.Reading{ID: "a", Velocity: new(4)}, engine.Reading{ID: "b", Velocity: new(1)}, engine.Reading{ID: "c", Velocity: new(3), Pulsing: new(true)})
	assert.Equal(t, map[string][]string{"fast": {"a", "c"}, "pulse": {"c"}}, set.FiredAt(r))
	assert.Equal(t, []string{"fast", "pulse"}, set.Fired(r))
}

// An opening that turned from outlet to inlet shows a change of path: it must not
// pass for a fire going down.
func TestAnOpeningThatTurnedInletIsNoImprovement(t *testing.T) {
	r := engine.Readings{V: 1, Looks: []engine.Look{
		{Openings: []engine.Reading{{ID: "a", Flow: engine.FlowBoth, Volume: new(3), Velocity: new(2)}, {ID: "b", Flow: engine.FlowOut, Volume: new(3), Velocity: new(3)}}},
		{Openings: []engine.Reading{{ID: "a", Flow: engine.FlowIn, Volume: new(0)}, {ID: "b", Flow: engine.FlowOut, Volume: new(4), Velocity: new(4)}}},
	}}
	assert.Equal(t, Worse, Read(smallSet(t, Priors{}), r).Trend)
}

func TestTheOrderOfOpeningsDoesNotMatter(t *testing.T) {
	set, rng := smallSet(t, Priors{}), rand.New(rand.NewPCG(1, 2))
	for range 200 {
		r := randomReadings(rng)
		want := Read(set, r)
		last := r.Looks[len(r.Looks)-1].Openings
		rng.Shuffle(len(last), func(i, j int) { last[i], last[j] = last[j], last[i] })
		sameFinding(t, want, Read(set, r))
	}
}

func sameFinding(t *testing.T, want, got engine.Finding) {
	t.Helper()
	require.InDeltaMapValues(t, want.Stage, got.Stage, 1e-12)
	require.InDeltaMapValues(t, want.Regime, got.Regime, 1e-12)
	require.Equal(t, want.Set, got.Set)
	require.Equal(t, want.Path, got.Path)
	require.Equal(t, want.Because, got.Because)
	require.Equal(t, want.Cautions, got.Cautions)
	require.Equal(t, want.Trend, got.Trend)
	for id, opening := range want.Openings {
		require.Equal(t, opening.Role, got.Openings[id].Role)
		require.InDelta(t, opening.Nearness, got.Openings[id].Nearness, 1e-12)
	}
	if want.NextLook != nil {
		require.InDelta(t, want.NextLook.GainBits, got.NextLook.GainBits, 1e-9)
	}
}

func TestProbabilitiesHoldForAnyReadings(t *testing.T) {
	set, rng := smallSet(t, Priors{}), rand.New(rand.NewPCG(3, 4))
	for range 500 {
		soundFinding(t, Read(set, randomReadings(rng)))
	}
}

// FuzzRead reads whatever a seed makes; nothing may crash or lose its shape.
func FuzzRead(f *testing.F) {
	f.Add(uint64(1), uint64(2))
	f.Fuzz(func(t *testing.T, a, b uint64) {
		soundFinding(t, Read(smallSet(t, Priors{}), randomReadings(rand.New(rand.NewPCG(a, b)))))
	})
}
