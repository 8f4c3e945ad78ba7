package infer

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"lintel/engine"
)

func conditionsOf(f engine.Finding, event engine.Hazard) []string {
	for _, h := range f.Hazards {
		if h.Event == event {
			return h.Conditions
		}
	}
	return nil
}

// To say that no sign was seen when nobody looked would be an all-clear.
func TestAHazardNobodyLookedForSaysSo(t *testing.T) {
	set := smallSet(t, Priors{})
	flowOnly := Read(set, look(engine.Reading{ID: "a", State: engine.StateOpen, Flow: engine.FlowBoth}))
	assert.Equal(t, []string{engine.Sentence(NotLookedFor, engine.Slot("cues", engine.Word("cue/velocity")))}, conditionsOf(flowOnly, engine.Flashover))
	assert.Equal(t, []string{engine.Sentence(NotLookedFor, engine.Slot("cues", engine.Word("cue/pulsing")))}, conditionsOf(flowOnly, engine.Backdraft))

	rated := Read(set, look(engine.Reading{ID: "a", Velocity: new(1), Pulsing: new(false)}))
	assert.Equal(t, []string{NoSign}, conditionsOf(rated, engine.Flashover))
	assert.Equal(t, []string{NoSign}, conditionsOf(rated, engine.Backdraft))
}

// Where some of its cues were rated, the others are named beside.
func TestAHazardHalfLookedForNamesTheRest(t *testing.T) {
	rules := []Rule{
		{ID: "glass", At: AtOpening, When: []string{"window is stained"}, Confidence: High, Hazards: []engine.Hazard{engine.SmokeExplosion}, Condition: "glass", Sources: []string{"x"}},
		{ID: "still", At: AtBuilding, When: []string{"most velocity <= 1", "most density >= 2"}, Confidence: High, Hazards: []engine.Hazard{engine.SmokeExplosion}, Condition: "still", Sources: []string{"x"}},
	}
	set, err := NewSet(rules, nil, Priors{Cover: 0.95})
	assert.NoError(t, err)
	of := func(r engine.Reading) []string { return conditionsOf(Read(set, look(r)), engine.SmokeExplosion) }
	assert.Equal(t, []string{NoSign, engine.Sentence(NotLookedFor, engine.Slot("cues", engine.Word("cue/window"), engine.Word("cue/density")))}, of(engine.Reading{ID: "a", Kind: engine.SeenWindow, Velocity: new(3)}))
	assert.Equal(t, []string{NoSign, engine.Sentence(NotLookedFor, engine.Slot("cues", engine.Word("cue/density")))}, of(engine.Reading{ID: "a", Kind: engine.SeenDoor, Velocity: new(3)}), "a door has no glass to look at")
	assert.Equal(t, []string{"still"}, of(engine.Reading{ID: "a", Velocity: new(0), Density: new(3)}))
}

// A reason says what its weight is about, and the weight is to three places.
func TestReasonsNameWhatTheySpeakFor(t *testing.T) {
	rules := []Rule{
		{ID: "air", At: AtOpening, When: []string{"pulsing"}, Confidence: High, Regime: engine.VentilationLimited, Sources: []string{"x"}},
		{ID: "grows", At: AtOpening, When: []string{"velocity = 2"}, Confidence: Middle, Supports: []engine.Stage{engine.Growth}, Sources: []string{"x"}},
		{ID: "near", At: AtOpening, When: []string{"flame is full"}, Confidence: Middle, Nearness: 1.2, Sources: []string{"x"}},
		{ID: "thin", At: AtOpening, When: []string{"density <= 1"}, Confidence: Low, Regime: engine.FuelLimited, Sources: []string{"x"}},
	}
	weights := []Weights{{Rule: "grows", Stage: [stageCount]float64{0, 1.23456, 0, 0, 0, 0, 0}}}
	set, err := NewSet(rules, weights, Priors{Cover: 0.95})
	assert.NoError(t, err)
	f := Read(set, look(engine.Reading{ID: "a", Flow: engine.FlowOut, Pulsing: new(true), Velocity: new(2), Flame: engine.FlameFull, Density: new(1)}))
	about := map[string]string{}
	for _, e := range append(f.Because, f.Against...) {
		about[e.Rule] = e.For
		if e.Rule == "grows" {
			assert.Equal(t, 1.235, e.Weight)
		}
	}
	assert.Equal(t, map[string]string{
		"air": string(engine.VentilationLimited), "grows": string(engine.Growth), "near": engine.NearestOpening, "thin": string(engine.VentilationLimited),
	}, about)
	assert.Equal(t, "thin", f.Against[0].Rule)
}
