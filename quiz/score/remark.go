package score

import (
	"strconv"
	"strings"

	"lintel/quiz"
)

// remark says in a few words how a reply compares with the truth.
func remark(kind quiz.AskKind, part *quiz.Part) string {
	right := spell(part.Truth[0])
	switch {
	case kind == quiz.AskPlane && oneWay(part.Truth[0]):
		return oneWayRemark(part, right)
	case part.Right && kind == quiz.AskPlane:
		return "right: it was at " + right
	case part.Right:
		return "right: " + right
	case part.Steps != nil:
		return steps(*part.Steps) + ": it was " + right
	case kind == quiz.AskPlane && *part.Given.Plane > *part.Truth[0].Plane:
		return "too high: it was at " + right
	case kind == quiz.AskPlane:
		return "too low: it was at " + right
	}
	return "it was " + right + ", not " + spell(part.Given)
}

// oneWay reports whether a neutral plane lies in no opening: at its foot all of
// it goes out, at its head all of it comes in.
func oneWay(truth quiz.Reply) bool { return *truth.Plane <= 0 || *truth.Plane >= 1 }

func oneWayRemark(part *quiz.Part, truth string) string {
	switch {
	case part.Right:
		return "right: " + truth
	case *part.Given.Plane > *part.Truth[0].Plane:
		return "too high: " + truth
	}
	return "too low: " + truth
}

func steps(n int) string {
	word := " steps too heavy"
	if n < 0 {
		word = " steps too light"
	}
	if abs(n) == 1 {
		word = strings.Replace(word, "steps", "step", 1)
	}
	return strconv.Itoa(abs(n)) + word
}

// spell puts a reply into words.
func spell(r quiz.Reply) string {
	switch {
	case r.Level != nil:
		return strconv.Itoa(*r.Level)
	case r.Plane != nil && *r.Plane <= 0:
		return "none in the opening: all of it goes out"
	case r.Plane != nil && *r.Plane >= 1:
		return "none in the opening: all of it comes in"
	case r.Plane != nil:
		return strconv.Itoa(int(float64(*r.Plane*100)+0.5)) + " % of the height"
	case r.Flow != "":
		return string(r.Flow)
	case r.Stage != "":
		return strings.ReplaceAll(string(r.Stage), "_", " ")
	case r.Regime != "":
		return strings.ReplaceAll(string(r.Regime), "_", "-")
	case r.Change != "":
		return string(r.Change)
	}
	return "not answered"
}
