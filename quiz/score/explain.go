package score

import (
	"slices"
	"strings"

	"lintel/engine"
	"lintel/quiz"
	"lintel/quiz/item"
)

// LevelWords is one level of a cue as content words it.
type LevelWords struct {
	Cue   engine.Cue `json:"cue"`
	Title string     `json:"title"` // of the cue
	Level int        `json:"level"`
	Name  string     `json:"name"`
	Looks string     `json:"looks"`
}

// Words is what an explanation is made of. Outcomes are tried in order, so a
// family's own come first.
type Words struct {
	Levels   []LevelWords
	Outcomes []item.Outcome
}

// Explain says why what was true was true, of each ask in order, and what would
// have told it, which is empty where no outcome says so. A level is explained by
// the scale's own words for it, beside those for the level that was given.
func Explain(asks []quiz.Ask, parts []quiz.Part, words *Words) (why, tell string) {
	var lines []string
	several := severalOpenings(asks)
	for i := range asks {
		line := ""
		if asks[i].Kind == quiz.AskLevel {
			line = words.levels(&asks[i], &parts[i])
		} else if told := words.outcome(&asks[i], &parts[i]); told != nil {
			line = told.Why
			if tell == "" {
				tell = told.Tell
			}
		}
		if line != "" && several {
			line = at(asks[i].Opening) + line
		}
		if line != "" && !slices.Contains(lines, line) {
			lines = append(lines, line)
		}
	}
	return strings.Join(lines, " "), tell
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

// at names the opening that a line is about.
func at(opening string) string {
	if opening == "" {
		return ""
	}
	return "At the " + strings.ReplaceAll(opening, "_", " ") + ": "
}

func (w *Words) outcome(ask *quiz.Ask, part *quiz.Part) *item.Outcome {
	for i := range w.Outcomes {
		if w.Outcomes[i].Explains(ask, &part.Truth[0]) {
			return &w.Outcomes[i]
		}
	}
	return nil
}

// levels sets the true level's words beside the given one's.
func (w *Words) levels(ask *quiz.Ask, part *quiz.Part) string {
	truth := w.level(ask.Cue, *part.Truth[0].Level)
	if truth == nil {
		return ""
	}
	line := truth.Title + ", " + truth.Name + ": " + sentence(truth.Looks)
	if part.Given.Level == nil || part.Right {
		return line
	}
	if given := w.level(ask.Cue, *part.Given.Level); given != nil {
		line += " You said " + given.Name + ": " + sentence(given.Looks)
	}
	return line
}

func (w *Words) level(c engine.Cue, level int) *LevelWords {
	for i := range w.Levels {
		if w.Levels[i].Cue == c && w.Levels[i].Level == level {
			return &w.Levels[i]
		}
	}
	return nil
}

// sentence ends a text with one full stop.
func sentence(text string) string { return strings.TrimSuffix(text, ".") + "." }
