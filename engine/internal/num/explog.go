package num

import "math"

// ln 2 in two pieces: the first has enough trailing zero bits that a whole
// number below 2048 times it is exact. Mathematical constants.
const (
	ln2High = 6.93147180369123816490e-01
	ln2Low  = 1.90821492927058770002e-10
	log2E   = 1.44269504088896338700
)

// Beyond these arguments e^x leaves the range of a float64.
const (
	expOverflow  = 709.782712893384
	expUnderflow = -745.2
)

// Exp returns e^x, accurate to about one unit in the last place.
//
// x = k ln 2 + r with |r| at most ln 2 / 2, and e^r by its Taylor series to the
// thirteenth power, whose first dropped term is below 5e-18.
func Exp(x float64) float64 {
	switch {
	case math.IsNaN(x):
		return x
	case x > expOverflow:
		return math.Inf(1)
	case x < expUnderflow:
		return 0
	}
	k := math.Floor(float64(log2E*x) + 0.5)
	high := x - float64(k*ln2High)
	low := float64(k * ln2Low)
	r := high - low
	// e^r = 1 + (r + tail): the series is summed from its small end.
	p := 1.0 / 6227020800
	p = float64(p*r) + 1.0/479001600
	p = float64(p*r) + 1.0/39916800
	p = float64(p*r) + 1.0/3628800
	p = float64(p*r) + 1.0/362880
	p = float64(p*r) + 1.0/40320
	p = float64(p*r) + 1.0/5040
	p = float64(p*r) + 1.0/720
	p = float64(p*r) + 1.0/120
	p = float64(p*r) + 1.0/24
	p = float64(p*r) + 1.0/6
	p = float64(p*r) + 0.5
	tail := float64(float64(r*r)*p) + ((high - r) - low)
	return scale(1+(r+tail), int(k))
}

// Log returns the natural logarithm of x.
//
// x = 2^k m with m between √½ and √2, and log m by the series of
// 2 artanh s with s = (m-1)/(m+1), |s| below 0.172.
func Log(x float64) float64 {
	switch {
	case math.IsNaN(x) || math.IsInf(x, 1):
		return x
	case x < 0:
		return math.NaN()
	case x == 0:
		return math.Inf(-1)
	}
	m, k := split(x)
	f := m - 1
	s := f / (2 + f)
	z := float64(s * s)
	p := 1.0 / 21
	p = float64(p*z) + 1.0/19
	p = float64(p*z) + 1.0/17
	p = float64(p*z) + 1.0/15
	p = float64(p*z) + 1.0/13
	p = float64(p*z) + 1.0/11
	p = float64(p*z) + 1.0/9
	p = float64(p*z) + 1.0/7
	p = float64(p*z) + 1.0/5
	p = float64(p*z) + 1.0/3
	// log(1+f) = 2s + 2s³p. With 2s = f - s f this keeps the leading term exact.
	rest := float64(s * (f - float64(2*float64(z*p))))
	return float64(k*ln2High) - ((rest - float64(k*ln2Low)) - f)
}

// split returns m between √½ and √2 and k with x = m 2^k, for positive x.
func split(x float64) (m, k float64) {
	shift := 0
	if x < 2.2250738585072014e-308 { // below the smallest normal number
		x *= 1 << 54
		shift = -54
	}
	bits := math.Float64bits(x)
	e := int(bits>>52) - 1022
	m = math.Float64frombits(bits&^(0x7ff<<52) | 1022<<52)
	if m < math.Sqrt2/2 {
		m *= 2
		e--
	}
	return m, float64(e + shift)
}

// scale returns x 2^k without losing a subnormal result.
func scale(x float64, k int) float64 {
	switch {
	case k > 1023:
		return x * power2(1023) * power2(k-1023)
	case k < -1022:
		return x * power2(k+54) * power2(-54)
	}
	return x * power2(k)
}

func power2(k int) float64 { return math.Float64frombits(uint64(1023+k) << 52) }
