package main

import (
	"lintel/content/fieldbook"
	"lintel/engine"
	"lintel/engine/infer"
	"lintel/quiz/item"
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
		{path: "sources_gen.go", pkg: "content", name: "sources"},
		{path: generated + "sources.json"},
	}},
	{folder: "rules", like: []ruleEntry(nil), outputs: []output{
		{path: "rules_gen.go", pkg: "content", name: "rules", pick: rulesOf},
		{path: "lint/cases_gen.go", pkg: "lint", name: "cases", pick: casesOf},
		{path: generated + "rules.json", pick: rulesOf},
	}},
	{folder: "measured", like: measured{}, outputs: []output{
		{path: "measures_gen.go", pkg: "content", name: "measures", pick: func(m any) (any, error) { return m.(measured).Rules, nil }},
		{path: "priors_gen.go", pkg: "content", name: "priors", pick: func(m any) (any, error) { return m.(measured).Priors, nil }},
		{path: generated + "measures.json", pick: func(m any) (any, error) { return m.(measured).Rules, nil }},
	}},
	{folder: "families", like: []item.Family(nil), outputs: []output{
		{path: "families_gen.go", pkg: "content", name: "families"},
	}},
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

// measured is content/measured/measured.yaml: what simulated fires made of the
// rules. The fitting command writes it.
type measured struct {
	Priors infer.Priors    `json:"priors"`
	Rules  []infer.Measure `json:"rules,omitempty"`
}

func cutPoints(book any) (any, error) {
	b := book.(fieldbook.ScaleBook)
	return b.CutPoints()
}
