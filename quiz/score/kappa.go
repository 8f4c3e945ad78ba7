package score

// LeastRatings is how many ratings kappa is shown from: about twice the square of
// the number of categories (five levels; D. V. Cicchetti, from memory, to be
// confirmed).
const LeastRatings = 50

// Kappa is the weighted agreement of two raters beyond chance. Table counts how
// often the first chose the row and the second the column; weight is how much a
// disagreement counts, 0 for none. The second result is false where agreement by
// chance leaves nothing to measure.
//
//	1 - Σ weight·observed / Σ weight·expected
//
// Source: J. Cohen, "Weighted kappa: nominal scale agreement with provision for
// scaled disagreement or partial credit", Psychological Bulletin 70, 1968.
func Kappa(table [][]float64, weight func(row, column int) float64) (float64, bool) {
	rows, columns, total := make([]float64, len(table)), make([]float64, len(table)), 0.0
	for i := range table {
		for j, n := range table[i] {
			rows[i] += n
			columns[j] += n
			total += n
		}
	}
	observed, expected := 0.0, 0.0
	for i := range table {
		for j, n := range table[i] {
			observed += float64(weight(i, j) * n)
			expected += float64(weight(i, j)*rows[i]) * columns[j]
		}
	}
	if total == 0 || expected == 0 {
		return 0, false
	}
	return 1 - float64(observed*total)/expected, true
}

// Quadratic weighs a disagreement by its square, the usual choice for levels
// (J. L. Fleiss and J. Cohen, Educational and Psychological Measurement 33, 1973,
// from memory, to be confirmed).
func Quadratic(row, column int) float64 { return float64((row - column) * (row - column)) }

// Linear weighs a disagreement by its steps.
func Linear(row, column int) float64 { return float64(abs(row - column)) }

// Nominal weighs every disagreement alike.
func Nominal(row, column int) float64 {
	if row == column {
		return 0
	}
	return 1
}
