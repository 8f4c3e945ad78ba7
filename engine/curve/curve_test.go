package curve_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"lintel/engine/curve"
)

// Go's own inverse error function is another algorithm for the same curve.
func TestQuantileAgainstTheInverseErrorFunction(t *testing.T) {
	for p := 1e-7; p < 1; p += 0.00031 {
		assert.InDelta(t, math.Sqrt2*math.Erfinv(2*p-1), curve.Quantile(p), 2e-13/p, "%v", p)
	}
	// Table 1 of any book of tables: 2.5 % and 0.5 % in a tail.
	assert.InDelta(t, 1.959963984540054, curve.Quantile(0.975), 1e-13)
	assert.InDelta(t, 2.5758293035489004, curve.Quantile(0.995), 1e-13)
	assert.Zero(t, curve.Quantile(0.5))
	assert.InDelta(t, curve.Quantile(0), -curve.Quantile(1), 1e-6)
}

// An advantage of half a logit is 0.6225, of 1, 2 and 3 logits 0.7311, 0.8808 and
// 0.9526; 400 points of an Elo rating are 0.9091 (10 to 1 by its definition: A. E.
// Elo, "The rating of chessplayers", 1978, from memory, to be confirmed).
func TestLogistic(t *testing.T) {
	for x, want := range map[float64]float64{0: 0.5, 0.5: 0.6225, 1: 0.7311, 2: 0.8808, 3: 0.9526, math.Ln10: 0.9091} {
		assert.InDelta(t, want, curve.Logistic(x), 5e-5)
		assert.InDelta(t, 1-want, curve.Logistic(-x), 5e-5)
	}
}
