package lint

import (
	"maps"
	"regexp"
	"slices"
	"strings"

	"lintel/content/fieldbook"
	"lintel/engine/infer"
)

// Texts teach conditions, look-alikes and the next look. These patterns are what
// they must never hold.
var refused = []struct {
	pattern *regexp.Regexp
	what    string
	do      string
}{
	{
		regexp.MustCompile(`(?i)(^|[.!?:;]\s+)(do not|don't|never|enter|vent|ventilate|open|close|shut|keep|stay|withdraw|retreat|attack|evacuate|cool|break|spray|go|get)\s`),
		"gives an order", "state a condition and the next look",
	},
	{
		regexp.MustCompile(`(?i)\b((do not|don't|never) (enter|vent|ventilate|open|close|shut|go|break)|must not|stay out|keep out|keep (it|the \w+|this|that|every\w*|all|doors?|windows?) (closed|shut)|(should|must|have to|has to) (be )?(enter|vent|open|close|shut|keep|stay|withdraw))`),
		"gives an order", "state a condition and the next look",
	},
	{
		regexp.MustCompile(`(?i)\b(\d+([.,]\d+)?|a few|one|two|three|four|five|six|eight|ten|twelve|fifteen|twenty|thirty|forty|fifty|sixty|ninety|hundred)[\s-]*(s|secs?|seconds?|min|minutes?)\b`),
		"gives a number of seconds", "say what it looks like instead of how long it takes",
	},
	{
		regexp.MustCompile(`(?i)\b(safe|safely|harmless|no danger|no hazard|all clear|low risk|low hazard|will (flash|explode|backdraft|collapse))\b`),
		"calls something safe or certain", "say what was and was not seen",
	},
}

// checkWords looks through the texts of rules and lessons, and through what
// explains an answer.
func (b *book) checkWords(f *findings) {
	for _, r := range b.rules {
		for _, text := range ruleTexts(&r) {
			checkText(f, "rule "+r.ID, text)
		}
	}
	for _, id := range slices.Sorted(maps.Keys(b.said)) {
		if strings.Contains(id, "why/") || strings.Contains(id, "tell") {
			checkText(f, "sentence "+id, b.said[id])
		}
	}
	for _, l := range b.lessons {
		for _, text := range lessonTexts(&l) {
			checkText(f, "lesson "+l.ID, text)
		}
	}
}

func checkText(f *findings, where, text string) {
	for _, r := range refused {
		if found := r.pattern.FindString(text); found != "" {
			f.add(where, r.what+` ("`+found+`")`, r.do)
		}
	}
}

func ruleTexts(r *infer.Rule) []string {
	return []string{r.Text, r.Condition, r.Caution, r.LookAlike, r.NextLook, r.CounterSign}
}

// lessonTexts leaves out what a reader is sent to try on the simulated prop.
func lessonTexts(l *fieldbook.Lesson) []string {
	texts := []string{l.Title, l.Idea, l.Mistake}
	texts = append(texts, l.Body...)
	texts = append(texts, l.Look...)
	return append(texts, l.Misleads...)
}
