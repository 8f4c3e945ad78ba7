package zone_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/engine/zone"
)

// Mass, every species and enthalpy balance to rounding, and no number is ever
// negative or not a number, in random houses with random moves.
func TestBooksBalanceInRandomHouses(t *testing.T) {
	houses := 200
	if testing.Short() {
		houses = 40
	}
	worst, errors := 0.0, 0
	for seed := range uint64(houses) {
		m := build(t, randomHouse(seed))
		r := rand.New(rand.NewPCG(seed, 5))
		for step := range 1200 {
			if step%80 == 79 {
				disturb(m, r)
			}
			m.Step(zone.StepS)
			worst = math.Max(worst, volumeError(m))
			if volumeError(m) > 0.03 {
				errors++
			}
		}
		audit(t, m, seed)
	}
	t.Logf("%d houses of 60 s: worst volume error %.2g of a room, %d room-steps over 3 %%", houses, worst, errors)
	assert.Zero(t, errors)
}

func disturb(m *zone.Model, r *rand.Rand) {
	switch r.IntN(4) {
	case 0, 1, 2:
		m.SetOpening(r.IntN(len(m.Vents)-len(m.Rooms)), r.Float64(), 2*r.Float64())
	default:
		m.AddWater(r.IntN(len(m.Rooms)), r.Float64())
	}
}

func volumeError(m *zone.Model) float64 {
	worst := 0.0
	for i := range m.Rooms {
		room := &m.Rooms[i]
		filled := room.Gas[zone.Lower].Volume() + room.Gas[zone.Upper].Volume()
		worst = math.Max(worst, math.Abs(filled/room.Volume-1))
	}
	return worst
}

// audit closes the books of a model and looks for impossible numbers.
func audit(t *testing.T, m *zone.Model, seed uint64) {
	t.Helper()
	var now zone.Layer
	for i := range m.Rooms {
		for layer := range m.Rooms[i].Gas {
			gas := &m.Rooms[i].Gas[layer]
			require.Greater(t, gas.Mass, 0.0, "house %d room %d", seed, i)
			temp := gas.Temp()
			require.True(t, temp > 150 && temp < 3500, "house %d room %d layer %d: %v K", seed, i, layer, temp)
			now.Mass += gas.Mass
			now.Heat += gas.Heat
			for k := range gas.Of {
				require.GreaterOrEqual(t, gas.Of[k], -1e-12*gas.Mass, "house %d room %d layer %d species %d", seed, i, layer, k)
				now.Of[k] += gas.Of[k]
			}
		}
	}
	b := &m.Books
	closes(t, b.Start.Mass+b.In.Mass-b.Out.Mass, now.Mass, b.Start.Mass+b.In.Mass, seed, "mass")
	heat := b.Start.Heat + b.In.Heat - b.Out.Heat + b.Released - b.Lost
	closes(t, heat, now.Heat, b.Start.Heat+b.In.Heat, seed, "enthalpy")
	for k := range now.Of {
		all := b.Start.Of[k] + b.In.Of[k]
		closes(t, all-b.Out.Of[k], now.Of[k], all, seed, "species", k)
	}
}

func closes(t *testing.T, want, got, size float64, seed uint64, what ...any) {
	t.Helper()
	require.InDelta(t, want, got, 1e-9*size+1e-12, "house %d: %v", seed, what)
}
