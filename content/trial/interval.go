package trial

import "math"

// Interval is the exact 95 % interval of a share: k of n, by Clopper and Pearson
// (Biometrika 26, 1934; from memory, to be confirmed).
func Interval(k, n int) (low, high float64) {
	const tail = 0.025
	low, high = 0, 1
	if n == 0 {
		return low, high
	}
	if k > 0 {
		low = solve(func(p float64) float64 { return 1 - below(k-1, n, p) - tail })
	}
	if k < n {
		high = solve(func(p float64) float64 { return tail - below(k, n, p) })
	}
	return low, high
}

// below is the chance of at most k of n at share p.
func below(k, n int, p float64) float64 {
	sum := 0.0
	for i := range k + 1 {
		ways, _ := math.Lgamma(float64(n + 1))
		a, _ := math.Lgamma(float64(i + 1))
		b, _ := math.Lgamma(float64(n - i + 1))
		sum += math.Exp(ways - a - b + float64(i)*math.Log(p) + float64(n-i)*math.Log1p(-p))
	}
	return sum
}

// solve halves the unit interval around the root of a rising function.
func solve(f func(float64) float64) float64 {
	low, high := 0.0, 1.0
	for range 60 {
		middle := (low + high) / 2
		if f(middle) < 0 {
			low = middle
		} else {
			high = middle
		}
	}
	return (low + high) / 2
}
