package item

import (
	"slices"
	"strings"

	"lintel/engine"
	"lintel/quiz"
)

// hidden tells what stands open out of sight, where an answer could hang on it:
// always where a flow or a change is asked for, and elsewhere for what varies
// from scene to scene. Nobody outside can see it, so it is said.
func (f *Family) hidden(scene *engine.Scenario) string {
	var states []string            // in the order in which they turn up
	names := map[string][]string{} // by state
	for i := range scene.Openings {
		o := &scene.Openings[i]
		if o.To == engine.Outside || !f.decides(o.ID) {
			continue
		}
		state := standing(o)
		if names[state] == nil {
			states = append(states, state)
		}
		names[state] = append(names[state], plainName(o.ID))
	}
	var parts []string
	for _, state := range states {
		verb := " is "
		if len(names[state]) > 1 {
			verb = " are "
		}
		parts = append(parts, list(names[state])+verb+state)
	}
	if parts == nil {
		return ""
	}
	return "Out of sight, " + strings.Join(parts, "; ") + "."
}

func (f *Family) decides(opening string) bool {
	if f.Kind == quiz.PredictMove || f.Kind == quiz.FlowPlane {
		return true
	}
	return slices.ContainsFunc(f.Vary, func(v Vary) bool { return v.Knob == OpeningShare && v.ID == opening })
}

// standing is how far an opening stands open, in a word. Where the words part is
// chosen by us.
func standing(o *engine.Opening) string {
	share := 1.0
	if o.Open != nil {
		share = *o.Open
	}
	switch {
	case share <= 0:
		return "shut"
	case share < 0.35:
		return "ajar"
	case share < 0.75:
		return "half open"
	}
	return "open"
}

// plainName is an opening's id as one says it.
func plainName(id string) string { return "the " + strings.ReplaceAll(id, "_", " ") }

// list joins words with commas and a last "and".
func list(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	last := len(words) - 1
	return strings.Join(words[:last], ", ") + " and " + words[last]
}
