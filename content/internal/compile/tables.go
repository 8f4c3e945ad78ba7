package main

import (
	"lintel/content/fieldbook"
	"lintel/content/internal/measured"
	"lintel/engine"
	"lintel/engine/infer"
	"lintel/quiz/item"
	"lintel/quiz/score"
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
		{path: "levels_gen.go", pkg: "content", name: "levels", pick: levelWords},
		{path: "lint/scales_gen.go", pkg: "lint", name: "scaleBook"},
		{path: generated + "scales.json"},
	}},
	{folder: "sources", like: []infer.Source(nil), outputs: []output{
		{path: "sources_gen.go", pkg: "content", name: "sources", pick: titlesOf},
		{path: "lint/sources_gen.go", pkg: "lint", name: "sources"},
		{path: generated + "sources.json"},
	}},
	{folder: "rules", like: []ruleEntry(nil), outputs: []output{
		{path: "rules_gen.go", pkg: "content", name: "rules", pick: readersRules},
		{path: "lint/rules_gen.go", pkg: "lint", name: "rules", pick: rulesOf},
		{path: "lint/cases_gen.go", pkg: "lint", name: "cases", pick: casesOf},
		{path: generated + "rules.json", pick: rulesOf},
	}},
	{folder: "measured", like: measured.File{}, outputs: []output{
		{path: "weights_gen.go", pkg: "content", name: "weights", pick: func(f any) (any, error) { return f.(measured.File).Weights(), nil }},
		{path: "priors_gen.go", pkg: "content", name: "priors", pick: func(f any) (any, error) { return f.(measured.File).Priors.Reader(), nil }},
		{path: "lint/measures_gen.go", pkg: "lint", name: "measures", pick: func(f any) (any, error) { return f.(measured.File).Rules, nil }},
		{path: generated + "measures.json", pick: func(f any) (any, error) { return f.(measured.File).Rules, nil }},
	}},
	{folder: "families", like: []item.Family(nil), outputs: []output{
		{path: "families_gen.go", pkg: "content", name: "families"},
	}},
	{folder: "outcomes", like: []item.Outcome(nil), outputs: []output{
		{path: "outcomes_gen.go", pkg: "content", name: "outcomes"},
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

// titlesOf is what the reader needs of a source; the rest is for people.
func titlesOf(sources any) (any, error) {
	var titles []infer.Source
	for _, s := range sources.([]infer.Source) {
		titles = append(titles, infer.Source{ID: s.ID, Title: s.Title})
	}
	return titles, nil
}

func cutPoints(book any) (any, error) {
	b := book.(fieldbook.ScaleBook)
	return b.CutPoints()
}

// levelWords is what an explanation needs of the scales.
func levelWords(book any) (any, error) {
	var list []score.LevelWords
	for _, scale := range book.(fieldbook.ScaleBook).Scales {
		for _, level := range scale.Levels {
			list = append(list, score.LevelWords{Cue: scale.Cue, Title: scale.Title, Level: level.Level, Name: level.Name, Looks: level.Looks})
		}
	}
	return list, nil
}
