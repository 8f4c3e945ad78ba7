package sim_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/engine"
)

// A shut compartment with hot gas rich in fuel and poor in oxygen, in a state that
// was measured before the door of a backdraft test was opened (methane 37.5 kW,
// 285 s; nist_backdraft_states in testdata/validation: 11 per cent of methane by mass,
// 6 of oxygen, 190 °C, given here as wood gas of the same heat): conditions are told
// while it is shut; opened on an igniter it bursts, and the door is the cause.
func TestEventsOfABackdraft(t *testing.T) {
	sc := engine.Scenario{
		V: 1, Ambient: engine.Ambient{TempC: 20}, EndS: 60,
		Compartments: []engine.Compartment{{
			ID: "room", WidthM: 1.52, DepthM: 0.99, HeightM: 0.99, Lining: "ceramic_fibre", LeakM2: ptr(0.0005),
			Initial: &engine.Initial{UpperC: ptr(190), LowerC: ptr(90), InterfaceM: ptr(0.39), O2: ptr(0.06), FuelGas: ptr(0.11 * 50 / 14)},
		}},
		Openings: []engine.Opening{{ID: "door", From: "room", To: engine.Outside, Kind: engine.Door, WidthM: 0.43, HeightM: 0.8, Open: ptr(0)}},
		Fuels:    []engine.Fuel{{ID: "igniter", In: "room", Kind: engine.GasBurner, HRRKW: [][2]float64{{22, 0.2}, {60, 0.2}}, BaseM: ptr(0.25), DiameterM: ptr(0.05)}},
	}
	b := light(t, sc).to(15)
	require.Equal(t, []string{string(engine.Backdraft) + "_conditions"}, b.kinds(), "told while it is shut")
	b.to(20).set("door", 1).to(55)
	for _, e := range b.Events() {
		t.Logf("%.1f s %s in %s: %s", e.TS, e.Kind, e.Where, e.Cause)
		if e.Kind == string(engine.Backdraft) {
			assert.Equal(t, "room", e.Where)
			assert.Contains(t, e.Cause, "cause/opened|s=6|opening=@opening/door")
		}
	}
	assert.Contains(t, b.kinds(), string(engine.Backdraft))

	left := light(t, sc).to(55)
	assert.NotContains(t, left.kinds(), string(engine.Backdraft), "left shut it does not")
}
