package validate

import (
	"fmt"
	"math"
)

// share spells a part of a whole: "93 % of 28".
func share(part float64, n int) string { return fmt.Sprintf("%.0f %% of %d", 100*part, n) }

// num spells a number with so many decimals, or a dash.
func num(x float64, decimals int) string {
	if math.IsNaN(x) {
		return "-"
	}
	if math.Abs(x) < 0.5*math.Pow(10, -float64(decimals)) {
		x = 0 // no minus zero
	}
	return fmt.Sprintf("%.*f", decimals, x)
}

// significant spells a number to two decimals below 10, one below 100 and none
// above: about the digits that were measured.
func significant(x float64) string {
	switch size := math.Abs(x); {
	case math.IsNaN(x):
		return "-"
	case math.IsInf(x, 0):
		return "never"
	case size < 9.995:
		return num(x, 2)
	case size < 99.95:
		return num(x, 1)
	}
	return num(x, 0)
}

func percent(x float64) string {
	if math.IsNaN(x) {
		return "-"
	}
	return num(100*x, 0) + " %"
}

// rounded keeps three decimals, for figures.
func rounded(x float64) float64 { return math.Round(1000*x) / 1000 }
