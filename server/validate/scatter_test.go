package validate

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Log-normal data with known parameters give them back: quantiles of a normal
// distribution stand for a large sample without any luck in it.
func TestScatterGivesBackWhatWasPutIn(t *testing.T) {
	const bias, sigmaM, sigmaE = 1.20, 0.15, 0.07
	const n = 4000
	spread := math.Sqrt(sigmaM*sigmaM + sigmaE*sigmaE)
	middle := math.Log(bias) - sigmaM*sigmaM/2 + sigmaE*sigmaE/2
	model, experiment := make([]float64, n), make([]float64, n)
	for i := range n {
		quantile := math.Sqrt2 * math.Erfinv(2*(float64(i)+0.5)/n-1)
		experiment[i] = 50 + float64(i%7)
		model[i] = experiment[i] * math.Exp(middle+spread*quantile)
	}
	s := scatterOf(model, experiment, sigmaE)
	assert.InDelta(t, bias, s.Bias, 0.002)
	assert.InDelta(t, sigmaM, s.Model, 0.002)
	assert.InDelta(t, sigmaE, s.Experiment, 1e-12)
}

// Scatter smaller than that of the experiments is shared half and half, as in
// the scatter-plot script of the guides.
func TestScatterBelowThatOfTheExperiments(t *testing.T) {
	s := scatterOf([]float64{100, 102}, []float64{100, 100}, 0.07)
	u := math.Log(1.02) / math.Sqrt2
	assert.InDelta(t, u/math.Sqrt2, s.Experiment, 1e-9)
	assert.InDelta(t, u/math.Sqrt2, s.Model, 1e-9)
	assert.InDelta(t, math.Sqrt(1.02), s.Bias, 1e-9)
}

func TestScatterLeavesOutWhatHasNoLogarithm(t *testing.T) {
	s := scatterOf([]float64{1, 2, -1, 0}, []float64{1, 2, 1, 1}, 0.05)
	assert.Equal(t, 2, s.Points)
	assert.True(t, math.IsNaN(scatterOf([]float64{1}, []float64{1}, 0.05).Bias))
}
