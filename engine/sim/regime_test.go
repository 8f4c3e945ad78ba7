package sim_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/engine"
)

// furnished is one room with a sofa, 200 kg of timber and its door open. Invented.
func furnished(lining string) engine.Scenario {
	return engine.Scenario{
		V: 1, Ambient: engine.Ambient{TempC: 15}, EndS: 1200,
		Compartments: []engine.Compartment{{ID: "room", WidthM: 4, DepthM: 5, HeightM: 2.4, Lining: lining}},
		Openings:     []engine.Opening{{ID: "door", From: "room", To: engine.Outside, Side: engine.Alpha, Kind: engine.Door, WidthM: 0.9, HeightM: 2, Open: ptr(1)}},
		Fuels: []engine.Fuel{
			{ID: "sofa", In: "room", Kind: "upholstered", MassKg: ptr(60), IgniteS: ptr(0)},
			{ID: "table", In: "room", Kind: "timber", MassKg: ptr(200)},
		},
	}
}

// mostIndoors is what one room can burn for the air that an opening lets in: half
// of A√H in kg/s (Kawagoe's, as of PD 7974-1; from memory, to be confirmed) at
// 3.0 MJ a kg of air.
func mostIndoors(area, height float64) float64 { return 3000 * 0.5 * area * height }

// A flashed-over room that burns more than its doorway lets in air for is
// ventilation-limited in every second of it, wherever its gas burns in the end:
// in the plume, in the layer or at the doorway. Before it flashes over, with air
// to spare, it is fuel-limited.
func TestFlashedOverRoomIsVentilationLimited(t *testing.T) {
	for _, lining := range []string{"gypsum", "osb"} {
		b := light(t, furnished(lining)).to(150)
		assert.Equal(t, engine.FuelLimited, b.Regime(), "still growing")
		limit, seconds := mostIndoors(0.9*2, 1.414), 0
		for at := 150.0; at < 900; at++ {
			b.to(at)
			if b.Model().HRR/1000 < 1.1*limit || b.Model().Rooms[0].Gas[1].OxygenMoles() > 0.02 {
				continue
			}
			if seconds++; seconds > 15 { // the regime is that of the last seconds
				require.Equal(t, engine.VentilationLimited, b.Regime(), "%s, %.0f s, %.0f kW", lining, at, b.Model().HRR/1000)
			}
		}
		t.Logf("%s: %d s above the %.0f kW that the door has air for", lining, seconds, limit)
		assert.Greater(t, seconds, 200)
	}
}

// A small fire in a large room wants for fuel all its life.
func TestSmallFireInALargeRoomIsFuelLimited(t *testing.T) {
	sc := furnished("gypsum")
	sc.Compartments[0].WidthM, sc.Compartments[0].DepthM, sc.Compartments[0].HeightM = 12, 15, 4
	sc.Fuels = []engine.Fuel{{ID: "strips", In: "room", Kind: "softwood", MassKg: ptr(4), IgniteS: ptr(0)}}
	b := light(t, sc)
	most := 0.0
	for at := 1.0; at < 600; at++ {
		b.to(at)
		most = max(most, b.Model().HRR/1000)
		require.Equal(t, engine.FuelLimited, b.Regime(), "%.0f s", at)
	}
	t.Logf("%.0f kW at most", most)
	assert.Greater(t, most, 20.0, "it does burn")
}
