package validate

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/content"
)

// A house that stands warm and unlit reads nought at every tap, though its air is
// lighter than that outside; the same house with its fire does not.
func TestHouseReadsFromBeforeIgnition(t *testing.T) {
	library := withLinings(content.Library())
	lit := twoStoreyHouse("6")
	unlit := lit
	unlit.scenario.Fuels, unlit.scenario.Moves = nil, nil
	for name, test := range map[string]houseTest{"unlit": unlit, "lit": lit} {
		p, err := start(library, test.scenario)
		require.NoError(t, err)
		logger, err := newLogger(library, test, p, twoStoreyTaps)
		require.NoError(t, err)
		got, err := logger.upTo(60)
		require.NoError(t, err)
		for i, tap := range twoStoreyTaps {
			if name == "lit" {
				assert.Greater(t, got[i], 5.0, tap.column)
				continue
			}
			assert.InDelta(t, 0, got[i], 0.25, tap.column)
		}
		high := over("master", 2.1)(p)
		assert.Greater(t, high, 1.0, "the warm house presses outward upstairs: %s", name)
	}
}

// A sample is the mean of the stretches before and after it, and the stretch
// before ignition is nought.
func TestSamplesReachBackBeforeIgnition(t *testing.T) {
	clock := 0.0
	l := &logger{everyS: 15, unlit: []float64{2}, earlier: []float64{0}}
	l.read = func(from, to float64) ([]float64, error) {
		clock = to
		return []float64{10}, nil
	}
	got, err := l.upTo(60)
	require.NoError(t, err)
	assert.InDelta(t, 8*(0.5+3)/4, got[0], 1e-12)
	assert.Equal(t, 60.0, clock)
	got, err = l.upTo(120)
	require.NoError(t, err)
	assert.InDelta(t, 8, got[0], 1e-12)
}
