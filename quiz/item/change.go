package item

import (
	"math"

	"lintel/engine"
	"lintel/engine/cue"
	"lintel/quiz"
)

// The least difference that counts as a change. People told which of two
// simulated fires burned more intensely from about a tenth upward (Weber
// fraction 0.09, 120 people; Fire 2023, 6(9), 328, seen as an abstract): twice
// that is chosen by us for a ratio, and about a sixteenth of the opening's
// height for a neutral plane.
const (
	changeRatio = 1.2
	changePlane = 0.06
)

// change compares one cue of an opening before and after, and says how far the
// answer stands from another. ok is false where there is nothing to compare.
func change(c engine.Cue, before, after *cue.Rating) (answer quiz.Change, margin float64, ok bool) {
	if c == engine.CueNeutralPlane {
		return planeChange(planeOf(before), planeOf(after))
	}
	return ratioChange(measureOf(c, before), measureOf(c, after))
}

func ratioChange(before, after float64) (quiz.Change, float64, bool) {
	small, large := math.Min(before, after), math.Max(before, after)
	switch {
	case !(large > 0): // also where either is NaN
		return "", 0, false
	case large < float64(changeRatio*small):
		return quiz.Same, 1 - float64(large/float64(changeRatio*small)), true
	case after > before:
		return quiz.More, 1 - float64(float64(changeRatio*small)/large), true
	}
	return quiz.Less, 1 - float64(float64(changeRatio*small)/large), true
}

func planeChange(before, after float64) (quiz.Change, float64, bool) {
	rise := after - before
	size := math.Abs(rise)
	switch {
	case math.IsNaN(rise):
		return "", 0, false
	case size < changePlane:
		return quiz.Same, 1 - size/changePlane, true
	case rise > 0:
		return quiz.More, 1 - changePlane/size, true
	}
	return quiz.Less, 1 - changePlane/size, true
}

// measureOf is the number behind an ordinal cue; a cue of smoke that cannot be
// seen is 0.
func measureOf(c engine.Cue, r *cue.Rating) float64 {
	if r.Density == 0 {
		return 0
	}
	switch c {
	case engine.CueVolume:
		return r.Measures.Volume
	case engine.CueVelocity:
		return r.Measures.Velocity
	case engine.CueDensity:
		return r.Measures.Density
	case engine.CueDarkness:
		return r.Measures.Darkness
	}
	return math.NaN()
}

// planeOf is where the neutral plane sits, taken to be at the foot of an
// opening that is all outlet and at the head of one that is all inlet.
func planeOf(r *cue.Rating) float64 {
	switch r.Flow {
	case engine.FlowBoth:
		return r.NeutralPlane
	case engine.FlowOut:
		return 0
	case engine.FlowIn:
		return 1
	}
	return math.NaN()
}
