package main

import (
	"fmt"
	"maps"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
)

// layScales puts the scales and hues into Spanish.
func layScales(content string) (english map[string]any, missing []string, err error) {
	if err := readJSON(filepath.Join(content, generated, "scales.json"), &english); err != nil {
		return nil, nil, err
	}
	own, err := readYAML(filepath.Join(content, spanish, "scales.yaml"))
	if err != nil {
		return nil, nil, err
	}
	tell := func(done bool, what string) {
		if !done {
			missing = append(missing, "scales.json: "+what)
		}
	}
	tell(replace(english, "note", own["note"]), "note")
	scales, hues := tree(own["scales"]), tree(own["hues"])
	for _, item := range list(english["scales"]) {
		scale := tree(item)
		cue, _ := scale["cue"].(string)
		words := tree(scales[cue])
		tell(replace(scale, "title", words["title"]), cue+".title")
		tell(replace(scale, "question", words["question"]), cue+".question")
		levels := list(words["levels"])
		for n, item := range list(scale["levels"]) {
			if n >= len(levels) {
				tell(false, cue+" level "+strconv.Itoa(n))
				continue
			}
			tell(replace(tree(item), "name", tree(levels[n])["name"]), cue+".name")
			tell(replace(tree(item), "looks", tree(levels[n])["looks"]), cue+".looks")
		}
	}
	for _, item := range list(english["hues"]) {
		hue := tree(item)
		colour, _ := hue["colour"].(string)
		for _, field := range []string{"name", "says", "also"} {
			tell(replace(hue, field, tree(hues[colour])[field]), colour+"."+field)
		}
	}
	return english, missing, nil
}

// laySentences puts what the engine says into Spanish: its own sentences, those
// of the families, and those that are texts of rules and scales.
func laySentences(content string) (all map[string]string, missing []string, err error) {
	english := map[string]string{}
	if err := readJSON(filepath.Join(content, generated, "sentences.en.json"), &english); err != nil {
		return nil, nil, err
	}
	own, err := ownSentences(content)
	if err != nil {
		return nil, nil, err
	}
	all = map[string]string{}
	for _, id := range slices.Sorted(maps.Keys(english)) {
		text, ok := own[id]
		switch {
		case strings.HasSuffix(id, "/source"): // titles stand as they were published
			text = plainSources.Replace(english[id])
		case !ok:
			text, missing = english[id], append(missing, "sentence "+id)
		case !slices.Equal(slots(text), slots(english[id])):
			return nil, nil, fmt.Errorf("%s: %s has other slots than the English", spanish, id)
		}
		all[id] = text
		delete(own, id)
	}
	for id := range own {
		missing = append(missing, "sentence "+id+", which is none of the English")
	}
	return all, missing, nil
}

// plainSources are the sources that are no titles, as pwa/src/words/es/frame.ts calls them.
var plainSources = strings.NewReplacer(
	"common practice (no source)", "práctica común (sin fuente)",
	"Trade press (low weight)", "Prensa del oficio (poco peso)",
	"simulated fire of this scene (no published source)", "fuego simulado de esta escena (sin fuente publicada)",
)

func ownSentences(content string) (map[string]string, error) {
	own := map[string]string{}
	for file, before := range map[string]string{"sentences.yaml": "", "families.yaml": "family/"} {
		texts, err := readYAML(filepath.Join(content, spanish, file))
		if err != nil {
			return nil, err
		}
		for id, text := range texts {
			own[before+id] = fmt.Sprint(text)
		}
	}
	rules, err := readYAML(filepath.Join(content, spanish, "rules.yaml"))
	if err != nil {
		return nil, err
	}
	for id, texts := range rules {
		for _, field := range []string{"text", "condition", "caution"} {
			if text, ok := tree(texts)[field].(string); ok {
				own["rule/"+id+"/"+field] = text
			}
		}
	}
	scales, err := readYAML(filepath.Join(content, spanish, "scales.yaml"))
	if err != nil {
		return nil, err
	}
	for cue, words := range tree(scales["scales"]) {
		own["scale/"+cue] = fmt.Sprint(tree(words)["title"])
		for n, level := range list(tree(words)["levels"]) {
			at := "scale/" + cue + "/" + strconv.Itoa(n)
			own[at] = fmt.Sprint(tree(level)["name"])
			own[at+"/looks"] = fmt.Sprint(tree(level)["looks"])
		}
	}
	return own, nil
}

// slots are the names in braces of a sentence, in order of name.
func slots(text string) []string {
	var names []string
	for _, part := range strings.Split(text, "{")[1:] {
		name, _, _ := strings.Cut(part, "}")
		names = append(names, name)
	}
	slices.Sort(names)
	return names
}

func tree(of any) map[string]any { t, _ := of.(map[string]any); return t }

func list(of any) []any { l, _ := of.([]any); return l }
