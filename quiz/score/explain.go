package score

import (
	"slices"
	"strconv"

	"lintel/engine"
	"lintel/quiz"
)

// Explain says why what was true was true, of each ask in order, and what would
// have told it. Family is where the family's words stand in the catalogue: its own
// line is taken before the general one. A level is explained by the scale's words
// for it, beside those for the level that was given.
func Explain(family string, asks []quiz.Ask, parts []quiz.Part) (why, tell string) {
	var lines []string
	several := severalOpenings(asks)
	for i := range asks {
		opening := ""
		if several {
			opening = asks[i].Opening
		}
		if line := lineOf(family, &asks[i], &parts[i], opening); line != "" && !slices.Contains(lines, line) {
			lines = append(lines, line)
		}
		if o := outcome(&asks[i], &parts[i]); o != "" {
			tell += family + "tell/" + o + "?tell/" + o + "?"
		}
	}
	return engine.Sentences(lines...), tell + family + "tell"
}

// severalOpenings reports whether the asks are about more than one opening, so
// that a line must say which it means.
func severalOpenings(asks []quiz.Ask) bool {
	for i := range asks {
		if asks[i].Opening != asks[0].Opening {
			return true
		}
	}
	return false
}

func lineOf(family string, ask *quiz.Ask, part *quiz.Part, opening string) string {
	var id string
	var slots []string
	if ask.Kind == quiz.AskLevel {
		id, slots = levelLine(ask.Cue, part)
	} else {
		o := outcome(ask, part)
		switch {
		case o == "":
			return ""
		case opening == "":
			return family + "why/" + o + "?why/" + o
		}
		id, slots = "why", []string{engine.Slot("why", engine.Word(family+"why/"+o+"?why/"+o))}
	}
	if opening != "" {
		id, slots = id+"/at", append(slots, engine.Slot("opening", engine.Word("opening/"+opening)))
	}
	return engine.Sentence(id, slots...)
}

// levelLine sets the true level's words beside the given one's.
func levelLine(c engine.Cue, part *quiz.Part) (id string, slots []string) {
	words := func(level int) string { return "scale/" + string(c) + "/" + strconv.Itoa(level) }
	truth := words(*part.Truth[0].Level)
	slots = []string{
		engine.Slot("cue", engine.Word("scale/"+string(c))),
		engine.Slot("name", engine.Word(truth)), engine.Slot("looks", engine.Word(truth+"/looks")),
	}
	if part.Given.Level == nil || part.Right {
		return "why/level", slots
	}
	given := words(*part.Given.Level)
	return "why/level/given", append(slots, engine.Slot("given", engine.Word(given)), engine.Slot("given_looks", engine.Word(given+"/looks")))
}

// outcome names what came true of an ask, as the catalogue does, or nothing for
// an answer that is a number.
func outcome(ask *quiz.Ask, part *quiz.Part) string {
	truth, accepted := &part.Truth[0], len(part.Truth)
	id := string(ask.Kind)
	if ask.Cue != "" {
		id += "/" + string(ask.Cue)
	}
	switch ask.Kind {
	case quiz.AskFlow:
		return id + "/" + string(truth.Flow)
	case quiz.AskStage:
		return id + "/" + string(truth.Stage)
	case quiz.AskRegime:
		return id + "/" + string(truth.Regime)
	case quiz.AskChange:
		return id + "/" + string(truth.Change)
	case quiz.AskTrend:
		if accepted > 1 {
			return id + "/starved" // neither better nor plainly worse
		}
		return id + "/" + string(truth.Trend)
	case quiz.AskOpening, quiz.AskPick:
		return string(ask.Kind)
	case quiz.AskMoment:
		if truth.Quiet {
			return id + "/quiet"
		}
		return id + "/held"
	}
	return ""
}
