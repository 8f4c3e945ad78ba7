// Package lint checks content as a careful editor would: that every rule can be
// wrong and says how, names its sources, fires where it must and is silent where
// it must be; that no text gives an order or a number of seconds; and that every
// reference leads somewhere. It works on the compiled content, so it needs no
// YAML reader, and is used by the server and by tests only.
package lint

import (
	"lintel/content"
	"lintel/content/fieldbook"
	"lintel/content/wording"
	"lintel/engine"
	"lintel/engine/infer"
	"lintel/quiz/item"
)

// Lint returns every problem of the content that ships.
func Lint() []engine.Problem { return shipped().check() }

// book is all content that is checked together.
type book struct {
	rules    []infer.Rule
	cases    []infer.Case
	sources  []infer.Source
	families []item.Family
	said     map[string]string // the catalogue of sentences
	lessons  []fieldbook.Lesson
	glossary fieldbook.Glossary
	cautions fieldbook.CautionBook
	scales   []string // source ids that the scales name
}

func shipped() *book {
	return &book{
		rules: rules, cases: cases, sources: sources, families: content.Families(), said: wording.Catalogue(),
		lessons: lessons, glossary: glossary, cautions: cautions, scales: scaleSources(scaleBook),
	}
}

// findings gathers problems.
type findings []engine.Problem

func (f *findings) add(where, what, do string) {
	*f = append(*f, engine.Problem{Where: where, What: what, Do: do})
}

func (b *book) check() []engine.Problem {
	var f findings
	b.checkNames(&f)
	b.checkSources(&f)
	b.checkRules(&f)
	b.checkLogic(&f)
	b.checkCases(&f)
	b.checkWords(&f)
	b.checkLinks(&f)
	return f
}

func scaleSources(s fieldbook.ScaleBook) []string {
	var ids []string
	for _, scale := range s.Scales {
		ids = append(ids, scale.Sources...)
	}
	for _, threshold := range s.Thresholds {
		ids = append(ids, threshold.Sources...)
	}
	return ids
}
