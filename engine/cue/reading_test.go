package cue_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/engine"
	"lintel/engine/cue"
)

func TestReadingHoldsWhatIsSeen(t *testing.T) {
	_, s := scaleBook(t)
	p := door()
	rating := cue.Rate(&p, &s, nil)
	opening := engine.Opening{ID: "front", Side: engine.Alpha, Kind: engine.Door, WidthM: 0.9, HeightM: 2}
	reading := rating.Reading(&opening, 0.5)

	assert.Equal(t, "front", reading.ID)
	assert.Equal(t, engine.SeenDoor, reading.Kind)
	assert.Equal(t, engine.StatePart, reading.State)
	for _, c := range engine.OrdinalCues {
		require.NotNil(t, reading.Level(c), c)
	}
	require.NotNil(t, reading.NeutralPlane)
	assert.InDelta(t, 0.5, *reading.NeutralPlane, 0)
	assert.Nil(t, reading.Floor, "the floor belongs to the building, not to the opening")
}

func TestEveryKindOfOpeningHasAName(t *testing.T) {
	for _, kind := range engine.OpeningKinds {
		assert.NotEqual(t, engine.SeenOther, kind.Seen(), kind)
	}
	assert.Equal(t, engine.StateClosed, cue.State(0))
	assert.Equal(t, engine.StateOpen, cue.State(1))
}

// Reversals every three seconds are counted as twenty a minute, and forgotten
// when the flow steadies.
func TestPulseCountsReversals(t *testing.T) {
	var pulse cue.Pulse
	rate := 0.0
	for step := range 1200 {
		net := 0.01
		if step/30%2 == 1 {
			net = -0.01
		}
		rate = pulse.Observe(0.1, net, 0.001)
	}
	assert.InDelta(t, 20, rate, 2)
	for range 1200 {
		rate = pulse.Observe(0.1, 0.01, 0.001)
	}
	assert.Less(t, rate, 0.1)
	for range 100 {
		rate = pulse.Observe(0.1, 0.0005, 0.001)
	}
	assert.Less(t, rate, 0.1, "noise is no reversal")
}

func TestRatingAllocatesNothing(t *testing.T) {
	_, s := scaleBook(t)
	p := door()
	rating := cue.Rate(&p, &s, nil)
	assert.Zero(t, testing.AllocsPerRun(100, func() { rating = cue.Rate(&p, &s, &rating) }))
}
