package num_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"

	"lintel/engine/internal/num"
)

// The standard library is the reference: its Exp, Log and Cbrt err by less than
// one unit in the last place (their package comments), so 1e-15 is two units.
const close = 1e-15

func TestAgreesWithTheStandardLibrary(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 200_000 {
		x := (r.Float64() - 0.5) * 1400
		assertRelative(t, math.Exp(x), num.Exp(x), close, "exp", x)
		y := math.Exp((r.Float64() - 0.5) * 1400)
		assertNear(t, math.Log(y), num.Log(y), close, "log", y)
		assertRelative(t, math.Cbrt(y), num.Cbrt(y), close, "cbrt", y)
		assertRelative(t, math.Cbrt(-y), num.Cbrt(-y), close, "cbrt", -y)
		if root := num.FifthRoot(y); y > 1e-290 {
			assertRelative(t, y, root*root*root*root*root, 10*close, "fifth root", y)
		}
	}
}

// The bases and exponents that the fire uses: y log x stays below 50, and one
// half unit in the last place of that is 50 times 1.1e-16.
func TestPowerOfFireEngineering(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 100_000 {
		x := math.Exp((r.Float64() - 0.5) * 26)
		y := (r.Float64() - 0.4) * 6
		assertRelative(t, math.Pow(x, y), num.Pow(x, y), 1e-14, "pow", x)
	}
}

func TestEdges(t *testing.T) {
	assert.Equal(t, 1.0, num.Exp(0))
	assert.Equal(t, math.Inf(1), num.Exp(800))
	assert.Equal(t, 0.0, num.Exp(-800))
	// e^-740 = 4.199e-322 by long division of 740 by ln 10; a subnormal number has
	// few digits, and the standard library keeps fewer of them on amd64.
	assert.InEpsilon(t, 4.199e-322, num.Exp(-740), 1e-2)
	assert.True(t, math.IsNaN(num.Exp(math.NaN())))
	assert.Equal(t, 0.0, num.Log(1))
	assert.Equal(t, math.Inf(-1), num.Log(0))
	assert.True(t, math.IsNaN(num.Log(-1)))
	// ln 5 - 320 ln 10, by hand: the standard library errs below the normal numbers.
	assert.InEpsilon(t, -735.2178, num.Log(5e-320), 1e-5)
	assert.Equal(t, 0.0, num.Pow(0, 2))
	assert.Equal(t, 1.0, num.Pow(0, 0))
	assert.True(t, math.IsNaN(num.Pow(-1, 0.5)))
	assert.Equal(t, 0.0, num.Cbrt(0))
	assert.Equal(t, 0.0, num.FifthRoot(0))
	assert.True(t, math.IsNaN(num.FifthRoot(-1)))
	assert.InEpsilon(t, 3.0, num.FifthRoot(243), 1e-15)
	assert.InEpsilon(t, 3.0, num.Cbrt(27), 1e-15)
	assert.InEpsilon(t, math.Cbrt(5e-320), num.Cbrt(5e-320), 1e-14)
}

func TestSmoothSteps(t *testing.T) {
	assert.Equal(t, 0.0, num.Smooth(1, 2, 4))
	assert.Equal(t, 0.5, num.Smooth(3, 2, 4))
	assert.Equal(t, 1.0, num.Smooth(9, 2, 4))
	assert.Equal(t, 1.0, num.Smooth(1, 4, 2), "swapped limits fall")
	assert.Equal(t, 2.0, num.Clamp(1, 2, 4))
	assert.Equal(t, 2.5, num.Lerp(2, 4, 0.25))
}

func assertRelative(t *testing.T, want, got, tolerance float64, what string, x float64) {
	t.Helper()
	if want == 0 || math.IsInf(want, 0) || math.Abs(want) < 1e-300 {
		return
	}
	if math.Abs(got/want-1) > tolerance {
		t.Fatalf("%s(%v) = %v, want %v", what, x, got, want)
	}
}

func assertNear(t *testing.T, want, got, tolerance float64, what string, x float64) {
	t.Helper()
	if math.Abs(got-want) > tolerance*max(1, math.Abs(want)) {
		t.Fatalf("%s(%v) = %v, want %v", what, x, got, want)
	}
}
