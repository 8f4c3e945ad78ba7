package score

import "slices"

// Overlap is what two sets have in common over all that either holds, from 0 to 1;
// two empty sets agree wholly (P. Jaccard, Bulletin de la Société vaudoise des
// sciences naturelles 37, 1901, from memory, to be confirmed).
func Overlap[T comparable](a, b []T) float64 {
	common, all := 0, 0
	for i, x := range a {
		if slices.Contains(a[:i], x) {
			continue
		}
		all++
		if slices.Contains(b, x) {
			common++
		}
	}
	for i, x := range b {
		if !slices.Contains(a, x) && !slices.Contains(b[:i], x) {
			all++
		}
	}
	if all == 0 {
		return 1
	}
	return float64(common) / float64(all)
}
