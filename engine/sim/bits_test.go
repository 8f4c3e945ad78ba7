package sim_test

import (
	"flag"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/engine"
	"lintel/engine/sim"
	"lintel/engine/sim/gauge"
)

var update = flag.Bool("update", false, "write testdata/bits.txt anew")

// Five hundred scenarios end in the same bits on every machine: the file was written by
// a native run, and this test also runs as WebAssembly. A change of physics
// changes the file, the commit says what changed, and the version rises: an answer
// to one fire must never be judged by another.
func TestBitsAreTheSameEverywhere(t *testing.T) {
	const file = "testdata/bits.txt"
	var lines strings.Builder
	lines.WriteString("engine " + engine.Version + "\n")
	for seed := range uint64(500) {
		lines.WriteString(strconv.FormatUint(seed, 10) + " " + strconv.FormatUint(finalBits(t, seed), 16) + "\n")
	}
	want, err := os.ReadFile(file)
	require.NoError(t, err)
	if *update && lines.String() != string(want) {
		require.False(t, strings.HasPrefix(string(want), "engine "+engine.Version+"\n"), "raise engine.Version first: its fires have changed")
		require.NoError(t, os.WriteFile(file, []byte(lines.String()), 0o644))
		return
	}
	assert.Equal(t, string(want), lines.String())
}

func finalBits(t *testing.T, seed uint64) uint64 {
	t.Helper()
	sc := gauge.RandomHouse(1000 + seed)
	if seed == 0 {
		sc = box(t)
	}
	for i, o := range sc.Openings {
		sc.Moves = append(sc.Moves, engine.Move{TS: float64(5 + 3*i), Opening: o.ID, Open: ptr(float64(i%3) / 2), OverS: 2})
	}
	sc.Moves = append(sc.Moves, engine.Move{TS: 50, WaterL: ptr(0.5), In: sc.Compartments[0].ID})
	r, err := sim.New(sc, library(t))
	require.NoError(t, err)
	require.NoError(t, r.Advance(60))
	var frame engine.Frame
	r.Frame(&frame)
	return r.Model().Hash() ^ gauge.Hash(frame.AppendTo(nil))
}
