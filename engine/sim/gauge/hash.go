package gauge

import "math"

// Hash folds numbers into 64 bits (FNV-1a). All kinds of "not a number" count as
// one, because machines differ in how they write it.
func Hash(numbers []float64) uint64 {
	h := uint64(14695981039346656037)
	for _, x := range numbers {
		bits := math.Float64bits(x)
		if math.IsNaN(x) {
			bits = 1
		}
		for range 8 {
			h = (h ^ bits&255) * 1099511628211
			bits >>= 8
		}
	}
	return h
}
