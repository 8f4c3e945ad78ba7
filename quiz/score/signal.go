package score

import "lintel/engine/curve"

// Detection is how well signals are told from noise, whatever the readiness to
// report, and that readiness: a criterion below 0 reports too readily, one above it
// too rarely.
//
//	d' = z(hits) - z(false alarms)    c = -(z(hits) + z(false alarms)) / 2
//
// Half a count is added to each cell and one to each total, so that a clean sheet
// has a finite result (the log-linear correction: M. J. Hautus, Behavior Research
// Methods, Instruments & Computers 27, 1995; the formulas: H. Stanislaw and
// N. Todorov, the same journal 31, 1999). It is false until both kinds were met.
func Detection(hits, misses, falseAlarms, correctRejections int) (dPrime, criterion float64, ok bool) {
	if hits+misses == 0 || falseAlarms+correctRejections == 0 {
		return 0, 0, false
	}
	hit := curve.Quantile(corrected(hits, misses))
	alarm := curve.Quantile(corrected(falseAlarms, correctRejections))
	return hit - alarm, -(hit + alarm) / 2, true
}

func corrected(yes, no int) float64 { return (float64(yes) + 0.5) / (float64(yes+no) + 1) }
