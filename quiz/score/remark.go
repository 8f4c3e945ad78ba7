package score

import (
	"strconv"

	"lintel/engine"
	"lintel/quiz"
)

// remark says in a few words how a reply compares with the truth.
func remark(kind quiz.AskKind, part *quiz.Part) string {
	truth := &part.Truth[0]
	switch {
	case kind == quiz.AskPlane:
		return planeRemark(part)
	case part.Signal != "":
		return "remark/" + string(part.Signal)
	case part.Given.Unsure && kind == quiz.AskMoment:
		return "remark/unanswered"
	case part.Given.Unsure:
		return engine.Sentence("remark/unsure", engine.Slot("truth", spell(truth)))
	case part.Right:
		return engine.Sentence("remark/right", engine.Slot("truth", spell(truth)))
	case part.Steps != nil:
		return engine.Sentence(steps(*part.Steps), engine.Slot("n", strconv.Itoa(abs(*part.Steps))), engine.Slot("truth", spell(truth)))
	}
	return engine.Sentence("remark/other", engine.Slot("truth", spell(truth)), engine.Slot("given", spell(&part.Given)))
}

// planeRemark tells a neutral plane from none: at an opening's foot all of it goes
// out, at its head all of it comes in.
func planeRemark(part *quiz.Part) string {
	truth := *part.Truth[0].Plane
	id := "remark/plane"
	switch {
	case truth <= 0:
		id = "remark/all_out"
	case truth >= 1:
		id = "remark/all_in"
	}
	switch {
	case part.Given.Unsure:
		id += "/unsure"
	case part.Right:
		id += "/right"
	case *part.Given.Plane > truth:
		id += "/too_high"
	default:
		id += "/too_low"
	}
	return engine.Sentence(id, engine.Slot("percent", strconv.Itoa(int(float64(truth*100)+0.5))))
}

func steps(n int) string {
	id := "remark/heavy"
	if n < 0 {
		id = "remark/light"
	}
	if abs(n) == 1 {
		return id + "/one"
	}
	return id + "/many"
}

// spell is a reply as a value of a slot.
func spell(r *quiz.Reply) string {
	switch {
	case r.Level != nil:
		return strconv.Itoa(*r.Level)
	case r.Flow != "":
		return engine.Word("flow/" + string(r.Flow))
	case r.Stage != "":
		return engine.Word("stage/" + string(r.Stage))
	case r.Regime != "":
		return engine.Word("regime/" + string(r.Regime))
	case r.Change != "":
		return engine.Word("change/" + string(r.Change))
	case r.Opening != "":
		return engine.Word("opening/" + r.Opening)
	case r.Trend != "":
		return engine.Word("trend/" + string(r.Trend))
	case r.Pick != "":
		return engine.Word("pick/" + string(r.Pick))
	}
	return engine.Word("remark/unanswered")
}
