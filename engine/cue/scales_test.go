package cue_test

import (
	"os"
	"testing"

	"github.com/goccy/go-yaml"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/content/fieldbook"
	"lintel/engine/cue"
	"lintel/engine/internal/num"
	"lintel/engine/shape"
)

// scaleBook reads the very cut points that the product ships.
func scaleBook(t *testing.T) (fieldbook.ScaleBook, cue.Scales) {
	t.Helper()
	text, err := os.ReadFile("../../content/scales/scales.yaml")
	require.NoError(t, err)
	var tree any
	require.NoError(t, yaml.Unmarshal(text, &tree))
	var book fieldbook.ScaleBook
	require.NoError(t, shape.Decode(floats(tree), &book))
	scales, err := book.CutPoints()
	require.NoError(t, err)
	return book, scales
}

// floats makes YAML's whole numbers what shape takes.
func floats(tree any) any {
	switch v := tree.(type) {
	case map[string]any:
		for key := range v {
			v[key] = floats(v[key])
		}
	case []any:
		for i := range v {
			v[i] = floats(v[i])
		}
	case uint64:
		return float64(v)
	case int64:
		return float64(v)
	}
	return tree
}

// Each cut of volume and velocity is what its derivation in the book computes.
func TestCutsFollowFromTheirDerivations(t *testing.T) {
	_, s := scaleBook(t)

	const door, doorHeight, timber = 0.9 * 2.0, 2.0, 8700 * 0.015 / 12400 // m², m, m²/s per kW
	flashover := 750 * door * num.Pow(doorHeight, 0.5)
	size := num.Pow(9.80665, 0.5) * num.Pow(door, 0.75)
	for i, share := range []float64{0.01, 0.1, 1} {
		assert.InEpsilon(t, timber*share*flashover/size, s.Volume.Cuts[i], 0.02)
	}
	for i, tempC := range []float64{50, 150, 350} {
		assert.InDelta(t, mixedRoomSpeed(tempC), s.Velocity.Cuts[i+1], 0.006)
	}
	assert.InDelta(t, 0.70*num.Pow(2*((250+273.15)/293.15-1), 0.5), s.Churning, 0.01)
}

// mixedRoomSpeed is the mean outflow over √(gH) of one opening on a well-mixed
// room: hydrostatic vent flow with C = 0.70 and 20 °C outside.
func mixedRoomSpeed(tempC float64) float64 {
	ratio := (tempC + 273.15) / 293.15
	plane := 1 / (1 + num.Cbrt(ratio))
	return 2.0 / 3 * 0.70 * num.Pow(2*(1-plane)*(ratio-1), 0.5)
}
