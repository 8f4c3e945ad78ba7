// Package curve holds the two curves by which answers are weighed: the logistic,
// which turns a distance in ability into a chance, and the normal quantile, which
// turns a share into a distance. Both rest on our own exp and log, so that a phone
// and a server agree to the last bit.
package curve

import (
	"math"

	"lintel/engine/internal/num"
)

// Logistic is 1/(1+exp(-x)): the chance of success at x logits above the task
// (G. Rasch, 1960, from memory, to be confirmed).
func Logistic(x float64) float64 { return 1 / (1 + num.Exp(-x)) }

// Quantile is z(p), the standard normal deviate below which a share p lies, for p
// from 1e-10 to 1-1e-10: beyond them it takes the end. It is the central and the
// middle branch of algorithm AS 241, PPND16 (M. J. Wichura, "The percentage points
// of the normal distribution", Applied Statistics 37, 1988), good to about 1 part
// in 1e16; shares of counts never reach its far tail.
func Quantile(p float64) float64 {
	const end = 1e-10
	p = num.Min(num.Max(p, end), 1-end)
	q := p - 0.5
	if math.Abs(q) <= 0.425 {
		r := 0.180625 - float64(q*q)
		return q * horner(&central, r) / horner(&centralBelow, r)
	}
	tail := num.Min(p, 1-p)
	r := math.Sqrt(-num.Log(tail)) - 1.6
	z := horner(&middle, r) / horner(&middleBelow, r)
	if q < 0 {
		return -z
	}
	return z
}

// horner is the polynomial with these coefficients, the constant first.
func horner(coefficients *[8]float64, x float64) float64 {
	sum := coefficients[7]
	for i := 6; i >= 0; i-- {
		sum = float64(sum*x) + coefficients[i]
	}
	return sum
}

// The coefficients of AS 241 (the published Fortran, from memory; the test holds
// the result against another algorithm).
var (
	central = [8]float64{
		3.3871328727963666080e0, 1.3314166789178437745e+2, 1.9715909503065514427e+3, 1.3731693765509461125e+4,
		4.5921953931549871457e+4, 6.7265770927008700853e+4, 3.3430575583588128105e+4, 2.5090809287301226727e+3,
	}
	centralBelow = [8]float64{
		1, 4.2313330701600911252e+1, 6.8718700749205790830e+2, 5.3941960214247511077e+3,
		2.1213794301586595867e+4, 3.9307895800092710610e+4, 2.8729085735721942674e+4, 5.2264952788528545610e+3,
	}
	middle = [8]float64{
		1.42343711074968357734e0, 4.63033784615654529590e0, 5.76949722146069140550e0, 3.64784832476320460504e0,
		1.27045825245236838258e0, 2.41780725177450611770e-1, 2.27238449892691845833e-2, 7.74545014278341407640e-4,
	}
	middleBelow = [8]float64{
		1, 2.05319162663775882187e0, 1.67638483018380384940e0, 6.89767334985100004550e-1,
		1.48103976427480074590e-1, 1.51986665636164571966e-2, 5.47593808499534494600e-4, 1.05075007164441684324e-9,
	}
)
