// Package wording puts what the engine says into sentences, for the server and its
// commands: in English, and on paper in the language of whoever asks for it. The
// phone has the same catalogues as JSON and does the same in
// pwa/src/worker/sentences.ts; one test holds the two against each other.
package wording

import (
	_ "embed" // the Spanish catalogue
	"encoding/json"
	"maps"
	"strings"
	"sync"
)

// catalogue is every sentence of one language by its id, and what it writes before
// decimals.
type catalogue struct {
	texts map[string]string
	point string
}

//go:embed sentences.es.json
var spanishText []byte

// spanish is read when it is first asked for: a paper is the only one to do so.
var spanish = sync.OnceValue(func() catalogue {
	all := catalogue{point: ","}
	if err := json.Unmarshal(spanishText, &all.texts); err != nil {
		panic("wording: " + err.Error()) // it was compiled in; a test reads it
	}
	return all
})

// Say puts keys (see engine.Sentence) into English words. A text that is no key of
// the catalogue comes back as it is, so that saying twice does no harm.
func Say(keys string) string { return catalogue{english, "."}.say(keys) }

// In is Say in a language; one that there is not is English.
func In(language string) func(keys string) string {
	if language == "es" {
		return spanish().say
	}
	return Say
}

func (all catalogue) say(keys string) string {
	lines := strings.Split(keys, "\n")
	for i, line := range lines {
		lines[i] = all.sentence(line)
	}
	return strings.Join(lines, " ")
}

// Catalogue is a copy of every English sentence by its id.
func Catalogue() map[string]string { return maps.Clone(english) }

// sentence says one key with its slots.
func (all catalogue) sentence(key string) string {
	ids, slots, _ := strings.Cut(key, "|")
	text, known := all.find(ids)
	if !known {
		return key
	}
	for _, slot := range strings.Split(slots, "|") {
		name, values, _ := strings.Cut(slot, "=")
		text = strings.ReplaceAll(text, "{"+name+"}", all.listed(values))
	}
	return text
}

// find is the first sentence of several ids that the catalogue has. An opening
// that has no name is called by its id.
func (all catalogue) find(ids string) (string, bool) {
	for _, id := range strings.Split(ids, "?") {
		if text, known := all.texts[id]; known {
			return text, true
		}
		if name, is := strings.CutPrefix(id, "opening/"); is {
			return "the " + strings.ReplaceAll(name, "_", " "), true
		}
		if number, unit, is := quantity(id); is {
			return strings.Replace(number, ".", all.point, 1) + unit, true
		}
	}
	return "", false
}

// quantities are words that hold a number of their own; a phone writes them in the
// units that its owner chose, a paper as the engine counts.
var quantities = map[string]string{"degrees": " °C", "litres": " l", "number": ""}

func quantity(id string) (number, unit string, is bool) {
	kind, number, _ := strings.Cut(id, "/")
	unit, is = quantities[kind]
	return number, unit, is
}

// listed says the values of a slot one after another.
func (all catalogue) listed(values string) string {
	list := strings.Split(values, ",")
	for i, value := range list {
		if id, word := strings.CutPrefix(value, "@"); word {
			if text, known := all.find(id); known {
				list[i] = text
			}
		}
	}
	last := len(list) - 1
	said := list[0]
	for i, value := range list[1:] {
		joint := all.texts["list/comma"]
		if i+1 == last {
			joint = all.texts["list/and"]
		}
		said = strings.NewReplacer("{a}", said, "{b}", value).Replace(joint)
	}
	return said
}
