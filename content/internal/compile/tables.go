package main

import (
	"lintel/content/fieldbook"
	"lintel/content/internal/measured"
	"lintel/engine"
	"lintel/engine/infer"
)

// generated is where the front end finds the field book's text.
const generated = "../pwa/src/generated/"

// tables lists all content, in the order in which it is fingerprinted.
var tables = []table{
	{folder: "fuels", like: []engine.FuelKind(nil), outputs: []output{
		{path: "fuels_gen.go", pkg: "content", name: "fuels"},
		{path: generated + "fuels.json"},
	}},
	{folder: "linings", like: []engine.Lining(nil), outputs: []output{
		{path: "linings_gen.go", pkg: "content", name: "linings"},
		{path: generated + "linings.json"},
	}},
	{folder: "scales", like: fieldbook.ScaleBook{}, outputs: []output{
		{path: "scales_gen.go", pkg: "content", name: "scales", pick: cutPoints},
		{path: "lint/scales_gen.go", pkg: "lint", name: "scaleBook"},
		{path: generated + "scales.json"},
	}},
	{folder: "sources", like: []infer.Source(nil), outputs: []output{
		{path: "lint/sources_gen.go", pkg: "lint", name: "sources"},
		{path: generated + "sources.json"},
	}},
	{folder: "rules", like: []ruleEntry(nil), outputs: []output{
		{path: "rules_gen.go", pkg: "content", name: "rules", pick: readersRules},
		{path: "lint/rules_gen.go", pkg: "lint", name: "rules", pick: rulesOf, each: true},
		{path: "lint/cases_gen.go", pkg: "lint", name: "cases", pick: casesOf, each: true},
		{path: generated + "rules.json", pick: rulesOf},
	}},
	{folder: "measured", like: measured.File{}, outputs: []output{
		{path: "weights_gen.go", pkg: "content", name: "weights", pick: func(f any) (any, error) { return f.(measured.File).Weights(), nil }},
		{path: "priors_gen.go", pkg: "content", name: "priors", pick: func(f any) (any, error) { return f.(measured.File).Priors.Reader(), nil }},
		{path: "lint/measures_gen.go", pkg: "lint", name: "measures", pick: func(f any) (any, error) { return f.(measured.File).Rules, nil }},
		{path: generated + "measures.json", pick: func(f any) (any, error) { return f.(measured.File).Rules, nil }},
	}},
	{folder: "families", like: []familyEntry(nil), outputs: []output{
		{path: "families_gen.go", pkg: "content", name: "families", pick: familiesOf, each: true},
	}},
	{folder: "outcomes", like: []fieldbook.Outcome(nil)},
	{folder: "sentences", like: map[string]string(nil)},
	{folder: "lessons", like: []fieldbook.Lesson(nil), outputs: []output{
		{path: "lint/lessons_gen.go", pkg: "lint", name: "lessons"},
		{path: generated + "lessons.json"},
	}},
	{folder: "glossary", like: fieldbook.Glossary{}, outputs: []output{
		{path: "lint/glossary_gen.go", pkg: "lint", name: "glossary"},
		{path: generated + "glossary.json"},
	}},
	{folder: "cautions", like: fieldbook.CautionBook{}, outputs: []output{
		{path: "lint/cautions_gen.go", pkg: "lint", name: "cautions"},
		{path: generated + "cautions.json"},
	}},
}

func cutPoints(book any) (any, error) {
	b := book.(fieldbook.ScaleBook)
	return b.CutPoints()
}
