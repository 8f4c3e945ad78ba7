package lint

import (
	"slices"

	"lintel/content/fieldbook"
	"lintel/engine"
	"lintel/engine/infer"
	"lintel/quiz/item"
)

// checkNames wants every id to be given once within its kind.
func (b *book) checkNames(f *findings) {
	once(f, "rule", b.rules, func(r infer.Rule) string { return r.ID })
	once(f, "source", b.sources, func(s infer.Source) string { return s.ID })
	once(f, "family", b.families, func(x item.Family) string { return x.ID })
	once(f, "lesson", b.lessons, func(l fieldbook.Lesson) string { return l.ID })
	once(f, "glossary term", b.glossary.Terms, func(t fieldbook.Term) string { return t.ID })
	once(f, "caution", b.cautions.Cautions, func(c fieldbook.Caution) string { return c.ID })
}

func once[T any](f *findings, kind string, list []T, id func(T) string) {
	seen := map[string]bool{}
	for _, entry := range list {
		name := id(entry)
		if name == "" {
			f.add(kind, "has no id", "give it one")
		}
		if seen[name] {
			f.add(kind+" "+name, "is given twice", "rename or remove one")
		}
		seen[name] = true
	}
}

// checkSources wants every text to name at least one source that is known.
func (b *book) checkSources(f *findings) {
	known := map[string]bool{}
	for _, s := range b.sources {
		known[s.ID] = true
		if s.Title == "" || s.Publisher == "" || s.Seen == "" {
			f.add("source "+s.ID, "lacks a title, publisher or what was seen of it", "fill it in")
		}
	}
	want := func(where string, ids []string) {
		if len(ids) == 0 {
			f.add(where, "names no source", "name one, or common_practice")
		}
		for _, id := range ids {
			if !known[id] {
				f.add(where, "names the unknown source "+id, "add it to content/sources")
			}
		}
	}
	for _, r := range b.rules {
		want("rule "+r.ID, r.Sources)
	}
	for _, l := range b.lessons {
		want("lesson "+l.ID, l.Sources)
	}
	for _, t := range b.glossary.Terms {
		want("glossary term "+t.ID, t.Sources)
	}
	for _, c := range b.cautions.Cautions {
		want("caution "+c.ID, c.Sources)
	}
	if len(b.scales) > 0 {
		want("scales", b.scales)
	}
}

// checkLinks wants every reference to lead somewhere, and every lesson to be
// reachable.
func (b *book) checkLinks(f *findings) {
	terms, rules, lessons := map[string]bool{}, map[string]bool{}, map[string]bool{}
	for _, t := range b.glossary.Terms {
		terms[t.ID] = true
	}
	for _, r := range b.rules {
		rules[r.ID] = true
	}
	for _, l := range b.lessons {
		lessons[l.ID] = true
	}
	lead := func(where, kind, id string, known map[string]bool) {
		if !known[id] {
			f.add(where, "names the unknown "+kind+" "+id, "add it or correct the id")
		}
	}
	for _, l := range b.lessons {
		for _, id := range l.Terms {
			lead("lesson "+l.ID, "glossary term", id, terms)
		}
		if l.Try.Kind != "" && !slices.ContainsFunc(b.families, func(x item.Family) bool { return x.Kind == l.Try.Kind }) {
			f.add("lesson "+l.ID, "sends its reader to "+string(l.Try.Kind)+", which no family offers", "name a kind that a family has")
		}
	}
	for _, t := range b.glossary.Terms {
		for _, id := range t.See {
			lead("glossary term "+t.ID, "glossary term", id, terms)
		}
	}
	for _, x := range b.families {
		lead("family "+x.ID, "rule", x.Rule, rules)
		if len(b.lessons) > 0 {
			lead("family "+x.ID, "lesson", x.Lesson, lessons)
		}
	}
}

// stagesKnown refuses a stage that no fire is in.
func stagesKnown(f *findings, where string, list []engine.Stage) {
	for _, stage := range list {
		if stage == engine.Undetermined || !engine.Known(stage, engine.Stages) {
			f.add(where, "speaks of the stage "+string(stage), "use a stage that a fire can truly be in")
		}
	}
}
