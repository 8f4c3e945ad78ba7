package num

// Max is the larger of two numbers, neither of them NaN. The language's own max
// is a call, not an instruction, in WebAssembly.
func Max(a, b float64) float64 {
	if a > b {
		return a
	}
	return b
}

// Min is the smaller of two numbers, neither of them NaN.
func Min(a, b float64) float64 {
	if a < b {
		return a
	}
	return b
}
