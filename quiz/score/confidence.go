package score

import "lintel/quiz"

// Came reports whether what a person was sure of came true: that every choice is
// the right one. What was rated is scored by how far off it is and counts for
// nothing here. It is false where no choice was made at all, for whoever could not
// tell was sure of nothing.
func Came(parts []quiz.Part) (came, sure bool) {
	came = true
	for i := range parts {
		p := &parts[i]
		if !p.Kind.Choice() {
			continue
		}
		came = came && p.Right
		sure = sure || !p.Given.Unsure
	}
	return came && sure, sure
}

// Brier is the squared distance between a confidence and what came true
// (G. W. Brier, "Verification of forecasts expressed in terms of probability",
// Monthly Weather Review, 1950; here in its two-class form): 0 is perfect,
// always saying one half gives a quarter.
func Brier(confidence float64, cameTrue bool) float64 {
	if cameTrue {
		confidence = 1 - confidence
	}
	return float64(confidence * confidence)
}
