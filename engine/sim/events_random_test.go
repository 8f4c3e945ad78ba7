package sim_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/engine"
	"lintel/engine/handcalc"
	"lintel/engine/sim"
	"lintel/engine/sim/gauge"
)

// halfShutHouse is a random house of which every other opening is shut after 40 s.
func halfShutHouse(t *testing.T, seed uint64) *bench {
	t.Helper()
	sc := gauge.RandomHouse(700_000 + seed)
	sc.EndS = 240
	for i := 0; i < len(sc.Openings); i += 2 {
		sc.Moves = append(sc.Moves, engine.Move{TS: 40, Opening: sc.Openings[i].ID, Open: ptr(0), OverS: 2})
	}
	return light(t, sc)
}

// thomas is the power that would flash a room over with all its openings open, kW
// (Thomas; PD 7974-1:2019 eq. 29).
func thomas(b *bench, room int) float64 {
	m := b.Model()
	e := handcalc.Enclosure{}
	for i := range m.Rooms[room].Faces {
		e.SurfaceM2 += m.Rooms[room].Faces[i].Area
	}
	for i := range m.Vents {
		v := &m.Vents[i]
		if v.Crack || v.Horizontal || v.A != room && v.B != room {
			continue
		}
		e.VentFactor += v.Slot.Width * math.Pow(v.Slot.Head-v.Slot.Sill, 1.5)
	}
	return handcalc.FlashoverThomas(e)
}

// Conditions for a backdraft are those of a room in which next to nothing burns
// (common practice, no source): a starved fire that still burns strongly waits for no
// opening. And gas that lights is told only of a room that was all but dark.
func TestEventsOfDarkRoomsInRandomHouses(t *testing.T) {
	seen := map[string]int{}
	for seed := range uint64(60) {
		b := halfShutHouse(t, seed)
		before := make([]float64, len(b.Model().Rooms)) // W, up to 5 s ago
		told := 0
		for look := range 5 * 240 {
			if look%25 == 0 {
				for i := range before {
					before[i] = b.Model().Rooms[i].Out.BurnW
				}
			}
			require.NoError(t, b.Advance(0.2))
			for _, e := range b.Events()[told:] {
				room := b.rooms[e.Where]
				out, little := b.Model().Rooms[room].Out, 0.1*1000*thomas(b, room)
				switch e.Kind {
				case string(engine.Backdraft) + "_conditions":
					assert.Less(t, out.BurnW, little, "house %d at %g s", seed, e.TS)
				case sim.LayerIgnition:
					assert.Less(t, before[room], little, "house %d at %g s", seed, e.TS)
					assert.Greater(t, out.LayerW, before[room], "house %d at %g s", seed, e.TS)
				}
				seen[e.Kind]++
				told++
			}
		}
	}
	t.Log(seen)
	require.Greater(t, seen[string(engine.Backdraft)+"_conditions"], 10)
	require.Greater(t, seen[sim.LayerIgnition], 3)
}
