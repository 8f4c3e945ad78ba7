package sim_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"

	"lintel/engine"
	"lintel/engine/zone"
)

// hottestFlame is an adiabatic flame of wood gas or methane in air, °C: 1,950 for
// methane (textbooks of combustion; from memory, to be confirmed).
const hottestFlame = 1950

// windblown is a room whose window stands to the wind, with a hall behind it whose
// front door is opened on the fire. Invented.
func windblown(wind, kg float64) engine.Scenario {
	return engine.Scenario{
		V: 1, Ambient: engine.Ambient{TempC: 15, WindMS: wind, WindFrom: engine.Charlie}, EndS: 900,
		Compartments: []engine.Compartment{
			{ID: "room", WidthM: 4, DepthM: 5, HeightM: 2.5, Lining: "gypsum"},
			{ID: "hall", WidthM: 2, DepthM: 5, HeightM: 2.5, Lining: "gypsum"},
		},
		Openings: []engine.Opening{
			{ID: "window", From: "room", To: engine.Outside, Side: engine.Charlie, Kind: engine.Window, SillM: 0.9, WidthM: 1.6, HeightM: 1.2, Open: ptr(1)},
			{ID: "door", From: "room", To: "hall", Kind: engine.Door, WidthM: 0.8, HeightM: 2, Open: ptr(1)},
			{ID: "front", From: "hall", To: engine.Outside, Side: engine.Alpha, Kind: engine.Door, WidthM: 0.9, HeightM: 2, Open: ptr(0)},
		},
		Fuels: []engine.Fuel{{ID: "sofa", In: "room", Kind: "upholstered", MassKg: &kg, IgniteS: ptr(0)}},
		Moves: []engine.Move{{TS: 300, Opening: "front", Open: ptr(1)}},
	}
}

// No gas is hotter than a flame, however thin a film the jets of a wind-driven fire
// burn into.
func TestNoGasIsHotterThanAFlame(t *testing.T) {
	for _, wind := range []float64{5, 10, 15, 20} {
		for _, kg := range []float64{100, 250, 400} {
			t.Run(fmt.Sprintf("%.0f m/s, %.0f kg", wind, kg), func(t *testing.T) {
				b, most := light(t, windblown(wind, kg)), 0.0
				for s := 1.0; s <= 900; s++ {
					b.to(s)
					for i := range b.Model().Rooms {
						most = max(most, b.Model().Rooms[i].Gas[zone.Upper].Temp()-zone.Kelvin)
					}
				}
				t.Logf("%.0f °C at most", most)
				assert.Less(t, most, float64(hottestFlame))
			})
		}
	}
}
