package main

import (
	"strconv"
	"strings"

	"lintel/content/fieldbook"
	"lintel/engine/infer"
)

// sentences is the catalogue of one language, by id.
type sentences map[string]string

// add puts a sentence in. One id given two texts is a mistake in the ids.
func (s sentences) add(id, text string) {
	if had, twice := s[id]; twice && had != text {
		panic("compile: two sentences are called " + id)
	}
	s[id] = text
}

// catalogue gathers everything that the engine may say.
func catalogue(values map[string]any) (sentences, error) {
	all := sentences{}
	for id, text := range values["sentences"].(map[string]string) {
		all.add(id, text)
	}
	if err := sentencesOfFamilies(all, values["families"].([]familyEntry)); err != nil {
		return nil, err
	}
	sentencesOfOutcomes(all, "", values["outcomes"].([]fieldbook.Outcome))
	sentencesOfScales(all, values["scales"].(fieldbook.ScaleBook))
	return all, sentencesOfRules(all, values)
}

func sentencesOfScales(into sentences, book fieldbook.ScaleBook) {
	for _, scale := range book.Scales {
		id := "scale/" + string(scale.Cue)
		into.add(id, scale.Title)
		for _, level := range scale.Levels {
			at := id + "/" + strconv.Itoa(level.Level)
			into.add(at, level.Name)
			into.add(at+"/looks", strings.TrimSuffix(level.Looks, ".")+".")
		}
	}
}

func sentencesOfRules(into sentences, values map[string]any) error {
	titles := map[string]string{}
	for _, s := range values["sources"].([]infer.Source) {
		titles[s.ID] = s.Title
	}
	rules, err := rulesOf(values["rules"])
	if err != nil {
		return err
	}
	for _, r := range rules.([]infer.Rule) {
		id := "rule/" + r.ID + "/"
		into.add(id+"text", r.Text)
		for _, other := range []struct{ name, text string }{{"condition", r.Condition}, {"caution", r.Caution}} {
			if other.text != "" {
				into.add(id+other.name, other.text)
			}
		}
		var named []string
		for _, source := range r.Sources {
			named = append(named, titles[source])
		}
		into.add(id+"source", strings.Join(named, "; "))
	}
	return nil
}

// keysOfRules puts keys in the place of a rule's texts. Two rules that warn alike
// share one key, so that a reading warns once.
func keysOfRules(rules []infer.Rule) {
	first := map[string]string{}
	for i := range rules {
		r := &rules[i]
		id := "rule/" + r.ID + "/"
		if r.Condition != "" {
			r.Condition = id + "condition"
		}
		if r.Caution != "" {
			if first[r.Caution] == "" {
				first[r.Caution] = id + "caution"
			}
			r.Caution = first[r.Caution]
		}
		r.Text = ""
	}
}

// writeSentences adds the catalogue, for the phone and for the server.
func writeSentences(all sentences, to outputs) error {
	if err := to.json(generated+"sentences.en.json", all); err != nil {
		return err
	}
	return to.golang("wording/sentences_gen.go", "wording", "english", "sentences and what else has words", map[string]string(all))
}
