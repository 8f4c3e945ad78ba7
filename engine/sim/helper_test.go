package sim_test

import (
	"testing"

	"lintel/content"
	"lintel/engine"
	"lintel/engine/sim"
)

func library(testing.TB) sim.Library { return content.Library() }

func ptr(x float64) *float64 { return &x }

// room is one room with a burner and a door, the shape of most published tests.
func room(kW float64) engine.Scenario {
	return engine.Scenario{
		V: 1, Ambient: engine.Ambient{TempC: 20}, EndS: 120,
		Compartments: []engine.Compartment{{ID: "room", WidthM: 2.8, DepthM: 2.8, HeightM: 2.13, Lining: "ceramic_fibre"}},
		Openings:     []engine.Opening{{ID: "door", From: "room", To: engine.Outside, Side: engine.Alpha, Kind: engine.Door, WidthM: 0.74, HeightM: 1.83, Open: ptr(1)}},
		Fuels:        []engine.Fuel{{ID: "burner", In: "room", Kind: engine.GasBurner, HRRKW: [][2]float64{{0, kW}}}},
	}
}
