package num

// Clamp returns x held between low and high.
func Clamp(x, low, high float64) float64 {
	if x < low {
		return low
	}
	if x > high {
		return high
	}
	return x
}

// Smooth returns 0 below low, 1 above high, and between them the cubic
// 3t² - 2t³, which has no corner at either end. low and high may be swapped for
// a step that falls.
func Smooth(x, low, high float64) float64 {
	t := (float64(x) - low) / float64(high-low) // x may be a product of the caller's, inlined here: never fuse it
	if !(t > 0) {                               // also when low equals high and x is no larger
		return 0
	}
	if t >= 1 {
		return 1
	}
	return float64(float64(t*t) * (3 - float64(2*t)))
}

// Lerp returns the value a fraction t of the way from a to b.
func Lerp(a, b, t float64) float64 { return a + float64(t*(b-a)) }
