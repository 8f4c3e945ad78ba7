package cue_test

import (
	"math"
	"os"
	"strconv"
	"testing"

	"github.com/goccy/go-yaml"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/content/fieldbook"
	"lintel/engine/cue"
	"lintel/engine/internal/num"
	"lintel/engine/internal/published"
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
	for i, tempC := range []float64{50, 150, 500} {
		assert.InEpsilon(t, doorFit(t)*excess(tempC), s.Velocity.Cuts[i+1], 0.05)
	}
	assert.InDelta(t, 0.70*num.Pow(2*((250+273.15)/293.15-1), 0.5), s.Churning, 0.01)
}

// excess is √(ΔT/Ta), to which buoyant speeds are proportional.
func excess(tempC float64) float64 { return math.Sqrt((tempC - 20) / 293.15) }

// measuredDoor is the mean speed out of one of the measured doors, over √(gH).
func measuredDoor(row published.Row) float64 {
	const head = 2.0
	plane, fastest := row.Float("plane_m"), row.Float("v_1.75")
	heights, speeds := []float64{plane}, []float64{0}
	for _, height := range []string{"1.25", "1.50"} {
		if h, _ := strconv.ParseFloat(height, 64); h > plane {
			heights, speeds = append(heights, h), append(speeds, row.Float("v_"+height))
		}
	}
	// From the last probe to the door's head the speed follows the root of height.
	heights = append(heights, 1.75, head)
	speeds = append(speeds, fastest, fastest*math.Sqrt((head-plane)/(1.75-plane)))
	area := 0.0
	for i := 1; i < len(heights); i++ {
		area += (heights[i] - heights[i-1]) * (speeds[i] + speeds[i-1]) / 2
	}
	return area / (head - plane) / math.Sqrt(9.80665*head)
}

// doorFit is the least-squares factor between the measured speeds and excess.
func doorFit(t *testing.T) float64 {
	t.Helper()
	var both, square float64
	for _, row := range published.Read(t, "optics/door_speeds.csv").Rows {
		x := excess(row.Float("layer_c"))
		both += measuredDoor(row) * x
		square += x * x
	}
	return both / square
}

// The measured doors rise through the levels with their fires.
func TestMeasuredDoorsRateByTheirFire(t *testing.T) {
	_, s := scaleBook(t)
	sums, counts := map[string]float64{}, map[string]float64{}
	for _, row := range published.Read(t, "optics/door_speeds.csv").Rows {
		fire := row.Name[:3]
		sums[fire] += measuredDoor(row)
		counts[fire]++
	}
	for fire, level := range map[string]int{"100": 2, "250": 3, "500": 4} {
		mean := sums[fire] / counts[fire]
		passed := 0
		for _, cut := range s.Velocity.Cuts {
			if mean >= cut {
				passed++
			}
		}
		assert.Equal(t, level, passed, "%s kW at %.3f", fire, mean)
	}
}
