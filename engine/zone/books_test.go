package zone_test

import (
	"runtime"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/engine/sim/gauge"
	"lintel/engine/zone"
)

// Mass, every species and enthalpy balance to a millionth, the layers fill their
// rooms, and no amount is ever negative or not a number, in random houses with
// random moves.
func TestBooksBalanceInRandomHouses(t *testing.T) {
	houses := 2000
	if testing.Short() || runtime.GOARCH == "wasm" {
		houses = 200 // the same bits (see sim), some four times slower
	}
	var all gauge.Audit
	content := materials(t)
	for seed := range uint64(houses) {
		require.NoError(t, gauge.RandomHouse(seed).Validate())
		one, err := gauge.Shake(seed, content)
		require.NoError(t, err)
		require.Zero(t, one.Negative+one.NotNumber, "house %d: %s", seed, one)
		all = all.Join(one)
	}
	t.Log(all)
	assert.Less(t, all.Mass, 1e-6)
	assert.Less(t, all.Enthalpy, 1e-6)
	assert.Less(t, all.Species, 1e-6)
	assert.Less(t, all.Steady, 0.001)
	assert.Less(t, all.Volume, 0.03, "in the step in which a door flies open or water falls")
}

func TestTheSameHouseTwiceIsTheSameToTheBit(t *testing.T) {
	run := func() uint64 {
		m := build(t, gauge.RandomHouse(7))
		for range 1200 {
			m.Step(zone.StepS)
		}
		return m.Hash()
	}
	assert.Equal(t, run(), run())
}
