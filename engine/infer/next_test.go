package infer

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/engine"
)

func TestTheNextLookIsOneNotYetTaken(t *testing.T) {
	set := smallSet(t, Priors{})
	finding := Read(set, look(engine.Reading{ID: "a", Volume: new(2)}))
	require.NotNil(t, finding.NextLook)
	assert.Positive(t, finding.NextLook.GainBits)
	assert.Contains(t, []engine.Cue{engine.CueVelocity, engine.CuePulsing}, finding.NextLook.Cue)

	// An answer that the tables say never comes cannot be worth a look.
	never := Answers{Cue: engine.CueVelocity}
	still := Answers{Cue: engine.CuePulsing}
	for stage := range TrueStages {
		never.Stage[stage] = []float64{0, 1, 0, 0, 0}
		still.Stage[stage] = []float64{1, 0}
	}
	set = smallSet(t, Priors{Answers: []Answers{never, still}})
	assert.Nil(t, Read(set, look(engine.Reading{ID: "a", Volume: new(2)})).NextLook)
}

// allRated is an opening of which everything was seen that a door can show.
func allRated(id string) engine.Reading {
	return engine.Reading{
		ID: id, Kind: engine.SeenDoor, State: engine.StateOpen, Flow: engine.FlowBoth, Volume: new(3), Velocity: new(2), Density: new(3), Darkness: new(3),
		Churning: new(false), Pulsing: new(false), Vanishes: new(false), Flame: engine.FlameNone, NeutralPlane: new(0.5),
	}
}

// Hue carries the least weight and is never needed: where it alone is missing, no
// look is named for it.
func TestHueIsNeverTheNextLook(t *testing.T) {
	hue := Rule{ID: "hue", At: AtOpening, When: []string{"colour is black"}, Confidence: High, Supports: []engine.Stage{engine.FullyDeveloped}, Sources: []string{"x"}}
	set, err := NewSet([]Rule{hue}, nil, Priors{Cover: 0.95})
	require.NoError(t, err)
	assert.Nil(t, Read(set, look(allRated("a"))).NextLook)
}

// An opening that nobody looked at is worth a look, whether it was listed without
// a rating or is known from the plan alone.
func TestAnOpeningNotLookedAtIsWorthALook(t *testing.T) {
	set := smallSet(t, Priors{})
	r := look(allRated("a"), engine.Reading{ID: "b", Kind: engine.SeenWindow})
	finding := Read(set, r)
	require.NotNil(t, finding.NextLook)
	assert.Equal(t, "b", finding.NextLook.Opening)

	r = look(allRated("a"))
	r.Plan = &engine.Plan{
		Compartments: []engine.Compartment{{ID: "room", WidthM: 3, DepthM: 3, HeightM: 2.4}},
		Openings: []engine.Opening{
			{ID: "a", From: "room", To: engine.Outside, Kind: engine.Door, WidthM: 0.9, HeightM: 2},
			{ID: "back", From: "room", To: engine.Outside, Kind: engine.Window, WidthM: 0.9, HeightM: 1},
		},
	}
	finding = Read(set, r)
	require.NotNil(t, finding.NextLook)
	assert.Equal(t, "back", finding.NextLook.Opening)
	assert.NotEqual(t, engine.CueColour, finding.NextLook.Cue)
}
