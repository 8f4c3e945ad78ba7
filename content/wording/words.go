// Package wording puts what the engine says into English sentences, for the server
// and its commands. The phone has the same catalogue as JSON and does the same in
// pwa/src/worker/sentences.ts, in the language that its holder chose; one test
// holds the two against each other.
package wording

import (
	"maps"
	"strings"
)

// Say puts keys (see engine.Sentence) into words. A text that is no key of the
// catalogue comes back as it is, so that saying twice does no harm.
func Say(keys string) string {
	lines := strings.Split(keys, "\n")
	for i, line := range lines {
		lines[i] = sentence(line)
	}
	return strings.Join(lines, " ")
}

// Catalogue is a copy of every English sentence by its id.
func Catalogue() map[string]string { return maps.Clone(english) }

// sentence says one key with its slots.
func sentence(key string) string {
	ids, slots, _ := strings.Cut(key, "|")
	text, known := find(ids)
	if !known {
		return key
	}
	for _, slot := range strings.Split(slots, "|") {
		name, values, _ := strings.Cut(slot, "=")
		text = strings.ReplaceAll(text, "{"+name+"}", listed(values))
	}
	return text
}

// find is the first sentence of several ids that the catalogue has. An opening
// that has no name is called by its id.
func find(ids string) (string, bool) {
	for _, id := range strings.Split(ids, "?") {
		if text, known := english[id]; known {
			return text, true
		}
		if name, is := strings.CutPrefix(id, "opening/"); is {
			return "the " + strings.ReplaceAll(name, "_", " "), true
		}
	}
	return "", false
}

// listed says the values of a slot one after another.
func listed(values string) string {
	list := strings.Split(values, ",")
	for i, value := range list {
		if id, word := strings.CutPrefix(value, "@"); word {
			if text, known := find(id); known {
				list[i] = text
			}
		}
	}
	last := len(list) - 1
	said := list[0]
	for i, value := range list[1:] {
		joint := english["list/comma"]
		if i+1 == last {
			joint = english["list/and"]
		}
		said = strings.NewReplacer("{a}", said, "{b}", value).Replace(joint)
	}
	return said
}
