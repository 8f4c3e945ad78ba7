package num

import "math"

// Pow returns x to the power y for x of at least 0, which is all that the fire
// asks for; a negative x gives NaN.
//
// x^y = e^(y log x). The error of the logarithm is multiplied by y log x, so the
// relative error grows to a few 1e-15 for the exponents of fire engineering
// (between -3 and 4) and bases between 1e-6 and 1e6.
func Pow(x, y float64) float64 {
	switch {
	case y == 0 || x == 1:
		return 1
	case math.IsNaN(x) || math.IsNaN(y) || x < 0:
		return math.NaN()
	case x == 0 && y > 0:
		return 0
	case x == 0:
		return math.Inf(1)
	}
	return Exp(y * Log(x))
}

// FifthRoot returns the fifth root of x for x of at least 0; a negative x gives
// NaN. Plumes rest on it: a flame's height grows with Q^(2/5). It takes a third of
// the time of Pow.
//
// As Cbrt: a first guess from the exponent bits, then Halley's method.
func FifthRoot(x float64) float64 {
	switch {
	case x < 0:
		return math.NaN()
	case x < 1e-300: // too small for its bits to give a guess, and for any fire
		return 0
	case !(x <= math.MaxFloat64):
		return x
	}
	// A fifth of the exponent and mantissa bits, re-biased: within 5 per cent.
	r := math.Float64frombits(math.Float64bits(x)/5 + 0x3325C00000000000)
	for range 3 {
		square := float64(r * r)
		fifth := float64(float64(square*square) * r)
		r = float64(r * ((float64(2*fifth) + float64(3*x)) / (float64(3*fifth) + float64(2*x))))
	}
	return r
}

// Cbrt returns the cube root of x.
//
// A first guess from the exponent bits, then Halley's method, which triples the
// digits of the guess each time.
func Cbrt(x float64) float64 {
	if x == 0 || math.IsNaN(x) || math.IsInf(x, 0) {
		return x
	}
	a, unscale := math.Abs(x), 1.0
	if a < 2.2250738585072014e-308 {
		a *= 1 << 54
		unscale = 1.0 / (1 << 18)
	}
	// A third of the exponent and mantissa bits, re-biased: within 6 per cent.
	r := math.Float64frombits(math.Float64bits(a)/3 + 0x2A9F7893782DA1CE)
	for range 3 {
		cube := float64(float64(r*r) * r)
		r = float64(r * ((cube + float64(2*a)) / (float64(2*cube) + a)))
	}
	return math.Copysign(r*unscale, x)
}
