package infer

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"lintel/engine"
)

// settledIn is the feature of the first opening of the last look.
func settledIn(looks ...engine.Look) float64 {
	return newScene(engine.Readings{V: 1, Looks: looks}).gather().openings[0][fSettled]
}

// An opening feeds the space behind it when air has gone in by it for as long as
// anyone looked. What was shut or moved since has not, and what pulses does not.
func TestTwoWayFlowIsSettledWhereNothingWasMoved(t *testing.T) {
	door := func(state engine.OpeningState, flow engine.Flow, pulsing *bool) engine.Look {
		return engine.Look{Openings: []engine.Reading{{ID: "door", State: state, Flow: flow, Pulsing: pulsing}}}
	}
	breathes := door(engine.StateOpen, engine.FlowBoth, nil)
	justOpened := door(engine.StateOpen, engine.FlowBoth, nil)
	justOpened.Changes = []engine.Change{{Opening: "door", State: engine.StateOpen}}
	elsewhere := door(engine.StateOpen, engine.FlowBoth, nil)
	elsewhere.Changes = []engine.Change{{Opening: "window", State: engine.StateOpen}}

	assert.Equal(t, 1.0, settledIn(breathes))
	assert.Equal(t, 1.0, settledIn(door(engine.StateBroken, engine.FlowBoth, new(false))))
	assert.Equal(t, 1.0, settledIn(door(engine.StateOpen, "", nil), breathes), "open at the look before")
	assert.Equal(t, 1.0, settledIn(elsewhere), "another opening was moved")
	assert.Zero(t, settledIn(justOpened))
	assert.Zero(t, settledIn(justOpened, breathes), "opened between the looks")
	assert.Zero(t, settledIn(door(engine.StateClosed, "", nil), breathes), "shut at the look before")
	assert.Zero(t, settledIn(door(engine.StateClosed, engine.FlowBoth, nil)), "the gaps of a shut door")
	assert.Zero(t, settledIn(door(engine.StateOpen, engine.FlowBoth, new(true))), "it pulses")
	assert.Zero(t, settledIn(door(engine.StateOpen, engine.FlowOut, nil)))
	assert.True(t, math.IsNaN(settledIn(door(engine.StateOpen, "", nil))), "which way it goes was not seen")
	assert.True(t, math.IsNaN(settledIn(door("", engine.FlowBoth, nil))), "how it stands was not seen")
}

// The state of an opening counts once it was seen; a crack never shuts.
func TestHowManyOpeningsWereSeenOpenOrShut(t *testing.T) {
	seen := func(openings ...engine.Reading) float64 {
		return newScene(look(openings...)).gather().building[fStateSeen-openingFeatures]
	}
	assert.Zero(t, seen(engine.Reading{ID: "a", Density: new(4)}))
	assert.Equal(t, 1.0, seen(engine.Reading{ID: "a", State: engine.StateOpen}, engine.Reading{ID: "b"}))
	assert.Equal(t, 2.0, seen(engine.Reading{ID: "a", State: engine.StateOpen}, engine.Reading{ID: "b", State: engine.StateClosed}))
	assert.Equal(t, 1.0, seen(engine.Reading{ID: "a", State: engine.StateClosed}, engine.Reading{ID: "b", Kind: engine.SeenCrack, State: engine.StateOpen}))
}
