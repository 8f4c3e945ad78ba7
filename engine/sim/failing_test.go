package sim_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/engine"
	"lintel/engine/sim"
)

// behindGlass is a room with a burner, its door ajar and its window shut.
func behindGlass(fails *engine.Failure) engine.Scenario {
	return engine.Scenario{
		V: 1, EndS: 1800, Ambient: engine.Ambient{TempC: 20},
		Compartments: []engine.Compartment{{ID: "room", WidthM: 4, DepthM: 4, HeightM: 2.4, Lining: "gypsum"}},
		Openings: []engine.Opening{
			{ID: "door", From: "room", To: engine.Outside, Kind: engine.Door, WidthM: 0.9, HeightM: 2, Open: ptr(0.5)},
			{ID: "window", From: "room", To: engine.Outside, Kind: engine.Window, SillM: 0.9, WidthM: 1, HeightM: 1.2, Open: ptr(0), Fails: fails},
		},
		Fuels: []engine.Fuel{{ID: "burner", In: "room", Kind: engine.GasBurner, HRRKW: [][2]float64{{0, 0}, {300, 1500}}}},
	}
}

func failedAt(t *testing.T, fails *engine.Failure) (at, share float64, cause string) {
	t.Helper()
	r, err := sim.New(behindGlass(fails), library(t))
	require.NoError(t, err)
	require.NoError(t, r.Advance(1700))
	require.NoError(t, r.Apply(engine.Move{Opening: "window", Open: ptr(0)}))
	require.NoError(t, r.Advance(10))
	for _, e := range r.Events() {
		if e.Kind == sim.OpeningFailed {
			assert.Equal(t, "room", e.Where)
			at, cause = e.TS, e.Cause
		}
	}
	return at, r.Model().Vents[1].Open, cause
}

// Glass falls out once the gas against it has been hot enough for some seconds,
// wood burns through later and the thicker the later; neither can be shut again, and
// what is not said to fail holds.
func TestOpeningsGiveWayToHeat(t *testing.T) {
	at, share, _ := failedAt(t, nil)
	assert.Zero(t, at, "it holds")
	assert.Zero(t, share)
	single, share, cause := failedAt(t, &engine.Failure{GlassC: ptr(400)})
	assert.Equal(t, 1.0, share, "what fell out stays open")
	assert.Regexp(t, `^cause/glass_fell\|t=@degrees/[1-9][0-9]+\|opening=@opening/window$`, cause)
	double, _, _ := failedAt(t, &engine.Failure{GlassC: ptr(600)})
	thin, _, burned := failedAt(t, &engine.Failure{WoodMM: ptr(3)})
	thick, _, _ := failedAt(t, &engine.Failure{WoodMM: ptr(6)})
	t.Logf("single pane %.0f s, double %.0f s, 3 mm of wood %.0f s, 6 mm %.0f s: %s; %s", single, double, thin, thick, cause, burned)
	assert.Positive(t, single)
	assert.Greater(t, double, single)
	assert.Contains(t, burned, "cause/burned_through|")
	assert.Greater(t, thin, double)
	// 0.7 mm a minute: 3 mm more take 257 s in gas of 600 °C and more.
	assert.InDelta(t, 257, thick-thin, 60)
}
