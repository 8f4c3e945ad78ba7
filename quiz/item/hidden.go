package item

import (
	"slices"

	"lintel/engine"
	"lintel/quiz"
)

// hidden tells what stands open out of sight, where an answer could hang on it:
// always where a flow or a change is asked for, and elsewhere for what varies
// from scene to scene. Nobody outside can see it, so it is said.
func (f *Family) hidden(scene *engine.Scenario) string {
	var states, said []string      // in the order in which they turn up
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
		names[state] = append(names[state], nameOf(o.ID))
	}
	for _, state := range states {
		number := "/one"
		if len(names[state]) > 1 {
			number = "/many"
		}
		said = append(said, engine.Sentence("hidden/"+state+number, engine.Slot("openings", names[state]...)))
	}
	return engine.Sentences(said...)
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
		return "half_open"
	}
	return "open"
}

// nameOf is an opening's name as a word of a sentence.
func nameOf(id string) string { return engine.Word("opening/" + id) }
