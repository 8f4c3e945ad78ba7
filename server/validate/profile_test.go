package validate

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A profile that is two layers already reduces to those two layers.
func TestReductionFindsTwoLayers(t *testing.T) {
	p := profile{heights: []float64{0.1, 0.999, 1.001, 2.3}, temps: []float64{30, 30, 200, 200}}
	z, low, high := p.layers(2.4)
	assert.InDelta(t, 1.0, z, 0.005)
	assert.InDelta(t, 30, low, 1e-9)
	assert.InDelta(t, 200, high, 1)
}

// Level temperatures have no layer.
func TestReductionOfALevelProfileHasNoLayer(t *testing.T) {
	p := profile{heights: []float64{0.1, 1, 2}, temps: []float64{20, 20, 20}}
	z, _, high := p.layers(2.4)
	assert.InDelta(t, 2.4, z, 1e-9)
	assert.InDelta(t, 20, high, 1e-9)
}

// Stack pressure: 100 °C against 20 °C gives 2.5 Pa a metre (a check value of
// the hand calculations, testdata/handcalc/pressure.csv).
func TestStackOfAProfile(t *testing.T) {
	p := profile{heights: []float64{0, 2}, temps: []float64{100, 100}}
	assert.InDelta(t, 2.5, p.stack(0, 1, 20), 0.05)
}

// Every file of rows opens, and the columns that name experiments are there.
func TestRowsAreThere(t *testing.T) {
	folder, err := DataFolder()
	require.NoError(t, err)
	for _, study := range studies {
		data, err := readTable(folder, study.file)
		require.NoError(t, err, rowFiles)
		assert.NotEmpty(t, data.all())
	}
	_, err = readTable(folder, "no_such.csv")
	assert.Error(t, err)
}
