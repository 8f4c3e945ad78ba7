package score

import (
	"strconv"

	"lintel/engine"
	"lintel/quiz"
)

func place(i int) string { return "replies[" + strconv.Itoa(i) + "]" }

// checkReply demands exactly the one field that answers this kind of ask, or
// "cannot tell" alone.
func checkReply(where string, kind quiz.AskKind, show []string, r *quiz.Reply) error {
	filled := map[quiz.AskKind]bool{
		quiz.AskLevel:   r.Level != nil,
		quiz.AskFlow:    r.Flow != "",
		quiz.AskPlane:   r.Plane != nil,
		quiz.AskStage:   r.Stage != "",
		quiz.AskRegime:  r.Regime != "",
		quiz.AskChange:  r.Change != "",
		quiz.AskOpening: r.Opening != "",
		quiz.AskTrend:   r.Trend != "",
		quiz.AskPick:    r.Pick != "",
		quiz.AskMoment:  (r.AtS != nil) != r.Quiet,
	}
	count := 0
	for _, set := range filled {
		if set {
			count++
		}
	}
	switch {
	case r.EventS != nil:
		return engine.Bad(where+".event_s", "is part of an answer", "leave it out: only a truth has it")
	case r.Unsure && count == 0:
		return nil
	case r.Unsure:
		return engine.Bad(where, "both answers and says that it cannot tell", "keep one of them")
	case count != 1 || !filled[kind]:
		return engine.Bad(where, "does not answer this question", "give "+string(kind)+" and nothing else")
	}
	return checkValue(where, kind, show, r)
}

func checkValue(where string, kind quiz.AskKind, show []string, r *quiz.Reply) error {
	switch kind {
	case quiz.AskLevel:
		if *r.Level < 0 || *r.Level > engine.TopLevel {
			return engine.Bad(where+".level", "is "+strconv.Itoa(*r.Level), "give a level from 0 to "+strconv.Itoa(engine.TopLevel))
		}
	case quiz.AskPlane:
		if !(*r.Plane >= 0 && *r.Plane <= 1) {
			return engine.Bad(where+".plane", "is out of range", "give a number from 0 to 1")
		}
	case quiz.AskFlow:
		return known(where+".flow", r.Flow, engine.Flows)
	case quiz.AskStage:
		return known(where+".stage", r.Stage, engine.Stages)
	case quiz.AskRegime:
		return known(where+".regime", r.Regime, engine.Regimes)
	case quiz.AskChange:
		return known(where+".change", r.Change, []quiz.Change{quiz.Less, quiz.Same, quiz.More})
	case quiz.AskOpening:
		return known(where+".opening", r.Opening, show)
	case quiz.AskTrend:
		return known(where+".trend", r.Trend, []quiz.Trend{quiz.Better, quiz.Steady, quiz.Worse})
	case quiz.AskPick:
		return known(where+".pick", r.Pick, []quiz.Pick{quiz.First, quiz.Second})
	case quiz.AskMoment:
		if r.AtS != nil && !(*r.AtS >= 0 && *r.AtS <= engine.MaxEndS) {
			return engine.Bad(where+".at_s", "is out of range", "give a time in the scene, in seconds")
		}
	}
	return nil
}

func known[T ~string](where string, word T, list []T) error {
	if engine.Known(word, list) {
		return nil
	}
	return engine.Bad(where, "is not a word known here", "use "+engine.OneOf(list))
}
