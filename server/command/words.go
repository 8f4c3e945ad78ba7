package command

import (
	"slices"
	"strings"

	"lintel/engine"
)

// terms are the trade's words for what files call by an id; where the glossary
// has the term, it is the glossary's.
var terms = map[string]string{
	string(engine.PreFlashover):         "pre-flashover",
	string(engine.VentilationDecay):     "ventilation-limited decay",
	string(engine.AfterKnockDown):       "after knock-down",
	string(engine.FuelLimited):          "fuel-limited",
	string(engine.VentilationLimited):   "ventilation-limited",
	string(engine.VentilationFlashover): "ventilation-induced flashover",
	string(engine.CueColour):            "hue",
	string(engine.CueWindow):            "the look of the glass",
	string(engine.CueVanishes):          "whether it vanishes",
	engine.NearestOpening:               "the opening nearest the seat",
	"layer_ignition":                    "the gas under the ceiling lit",
	"re_growth":                         "re-growth",
	"opening_failed":                    "an opening gave way",
}

// plain spells a word of a file for a person.
func plain(word string) string {
	if term, known := terms[word]; known {
		return term
	}
	return strings.ReplaceAll(word, "_", " ")
}

// flows are what each role at an opening is called.
var flows = map[engine.Role]string{
	engine.RoleIn:      "inlet, air goes in",
	engine.RoleOut:     "outlet, smoke comes out",
	engine.RoleBoth:    "two-way, in and out",
	engine.RoleNone:    "nothing seen to move",
	engine.RoleUnknown: "flow not seen",
}

// spelledPath words a flow path: in by one opening, out by another, or in and out
// by the same.
func spelledPath(path []string) string {
	first, last := path[0], path[len(path)-1]
	if len(path) == 1 {
		return first
	}
	through := ""
	if inner := path[1 : len(path)-1]; len(inner) > 0 {
		through = ", through " + strings.Join(inner, ", then ")
	}
	if first == last {
		return "in and out by " + first + through
	}
	return "in by " + first + through + ", out by " + last
}

// byShare orders stages from the likeliest down.
func byShare(stages []engine.Stage, share map[engine.Stage]float64) []engine.Stage {
	ordered := slices.Clone(stages)
	slices.SortStableFunc(ordered, func(a, b engine.Stage) int {
		switch {
		case share[a] > share[b]:
			return -1
		case share[a] < share[b]:
			return 1
		}
		return 0
	})
	return ordered
}

func spelled[T ~string](list []T) []string {
	words := make([]string, len(list))
	for i, word := range list {
		words[i] = plain(string(word))
	}
	return words
}
