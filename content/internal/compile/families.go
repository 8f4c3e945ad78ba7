package main

import (
	"fmt"
	"strings"

	"lintel/content/fieldbook"
	"lintel/engine/shape"
	"lintel/quiz/item"
)

// familyEntry is a family as it is written: the recipe and, in the same entry, its
// words.
type familyEntry map[string]any

// wordFields are those of an entry that people read.
var wordFields = []string{"title", "text", "tell", "outcomes"}

// split parts an entry's words from its recipe.
func (e familyEntry) split() (item.Family, fieldbook.FamilyWords, error) {
	recipe, words := map[string]any{}, map[string]any{}
	for name, value := range e {
		recipe[name] = value
	}
	for _, name := range wordFields {
		if e[name] != nil {
			words[name] = e[name]
		}
		delete(recipe, name)
	}
	var f item.Family
	var w fieldbook.FamilyWords
	texts := map[string]string{}
	if asks, ok := e["asks"].([]any); ok {
		recipe["asks"], texts = splitAsks(asks)
	}
	if err := shape.Decode(recipe, &f); err != nil {
		return f, w, err
	}
	if err := shape.Decode(words, &w); err != nil {
		return f, w, err
	}
	w.ID, w.Asks = f.ID, texts
	return f, w, nil
}

// splitAsks takes the texts out of the asks, by the id that each will have.
func splitAsks(asks []any) ([]any, map[string]string) {
	plain, texts := make([]any, len(asks)), map[string]string{}
	for i, ask := range asks {
		fields, ok := ask.(map[string]any)
		if !ok {
			plain[i] = ask
			continue
		}
		kept := map[string]any{}
		for name, value := range fields {
			kept[name] = value
		}
		if text, ok := kept["text"].(string); ok {
			var a item.Ask
			delete(kept, "text")
			if shape.Decode(kept, &a) == nil {
				texts[a.ID()] = text
			}
		}
		plain[i] = kept
	}
	return plain, texts
}

func familiesOf(entries any) (any, error) {
	var list []item.Family
	for _, entry := range entries.([]familyEntry) {
		f, _, err := entry.split()
		if err != nil {
			return nil, fmt.Errorf("family %v: %w", entry["id"], err)
		}
		list = append(list, f)
	}
	return list, nil
}

// sentencesOfFamilies puts every family's words into the catalogue.
func sentencesOfFamilies(into sentences, entries []familyEntry) error {
	for _, entry := range entries {
		f, w, err := entry.split()
		if err != nil {
			return fmt.Errorf("family %v: %w", entry["id"], err)
		}
		into.add(f.Words("title"), w.Title)
		into.add(f.Words("text"), w.Text)
		into.add(f.Words("tell"), w.Tell)
		for ask, text := range w.Asks {
			into.add(f.Words("ask/"+ask), text)
		}
		sentencesOfOutcomes(into, f.Words(""), w.Outcomes)
	}
	return nil
}

func sentencesOfOutcomes(into sentences, under string, outcomes []fieldbook.Outcome) {
	for _, o := range outcomes {
		parts := []string{string(o.Ask)}
		if o.Cue != "" {
			parts = append(parts, string(o.Cue))
		}
		if o.Is != "" {
			parts = append(parts, o.Is)
		}
		id := strings.Join(parts, "/")
		into.add(under+"why/"+id, o.Why)
		if o.Tell != "" {
			into.add(under+"tell/"+id, o.Tell)
		}
	}
}
