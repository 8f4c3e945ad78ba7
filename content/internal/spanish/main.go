// Command spanish lays the Spanish of content/spanish over what the front end
// reads in English, and writes the same files again under generated/es. A text
// that has no Spanish yet stays English and is told; the test of this package
// lets none through.
package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"log"
	"os"
	"path/filepath"
	"strings"

	"github.com/goccy/go-yaml"
)

const (
	generated = "../pwa/src/generated"
	spanish   = "spanish"
)

func main() {
	log.SetFlags(0)
	log.SetPrefix("spanish: ")
	missing, err := translate(".", true)
	if err != nil {
		log.Fatal(err)
	}
	for _, text := range missing {
		log.Print("no Spanish for ", text)
	}
}

// book is one file of the front end: which YAML holds its Spanish, under which
// part of it, and which of its fields a person reads.
type book struct {
	file, from, part string
	in               string   // where the list stands in the file, if not at its root
	fields           []string // texts, or lists of them
}

var books = []book{
	{file: "lessons.json", from: "lessons.yaml", fields: []string{"title", "idea", "body", "look", "misleads", "mistake"}},
	{file: "glossary.json", from: "glossary.yaml", in: "terms", fields: []string{"term", "meaning", "used"}},
	{file: "rules.json", from: "rules.yaml", fields: []string{"text", "condition", "look_alike", "next_look", "counter_sign", "caution"}},
	{file: "fuels.json", from: "materials.yaml", part: "fuels", fields: []string{"name"}},
	{file: "linings.json", from: "materials.yaml", part: "linings", fields: []string{"name"}},
	{file: "cautions.json", from: "cautions.yaml", in: "cautions", fields: []string{"text"}},
}

// translate writes every file where asked to, and returns what has no Spanish.
func translate(content string, write bool) (missing []string, err error) {
	put := func(name string, tree any) error {
		if !write {
			return nil
		}
		return writeJSON(filepath.Join(content, generated, "es", name), tree)
	}
	for _, b := range books {
		list, gaps, err := b.lay(content)
		if err != nil {
			return nil, err
		}
		missing = append(missing, gaps...)
		if err := put(b.file, list); err != nil {
			return nil, err
		}
	}
	scales, gaps, err := layScales(content)
	if err != nil {
		return nil, err
	}
	missing = append(missing, gaps...)
	if err := put("scales.json", scales); err != nil {
		return nil, err
	}
	sentences, gaps, err := laySentences(content)
	if err != nil {
		return nil, err
	}
	missing = append(missing, gaps...)
	seen, gaps, err := laySources(content)
	if err != nil {
		return nil, err
	}
	missing = append(missing, gaps...)
	if err := put("sources.json", seen); err != nil {
		return nil, err
	}
	if write {
		err = errors.Join(
			writeJSON(filepath.Join(content, generated, "sentences.es.json"), sentences),
			writeJSON(filepath.Join(content, "wording", "sentences.es.json"), sentences), // for the server's papers
		)
	}
	return missing, err
}

// lay returns a file with the texts of its list in Spanish.
func (b book) lay(content string) (whole any, missing []string, err error) {
	if err := readJSON(filepath.Join(content, generated, b.file), &whole); err != nil {
		return nil, nil, err
	}
	entries := list(whole)
	if b.in != "" {
		entries = list(tree(whole)[b.in])
	}
	texts, err := b.texts(content)
	if err != nil {
		return nil, nil, err
	}
	for _, item := range entries {
		entry := tree(item)
		id, _ := entry["id"].(string)
		own, ok := texts[id].(map[string]any)
		if short, isText := texts[id].(string); isText {
			own, ok = map[string]any{b.fields[0]: short}, true
		}
		if !ok {
			missing = append(missing, b.file+": "+id)
			continue
		}
		for _, field := range b.fields {
			if entry[field] == nil || entry[field] == "" {
				continue
			}
			if !replace(entry, field, own[field]) {
				missing = append(missing, b.file+": "+id+"."+field)
			}
		}
		if aliases, ok := own["aliases"]; ok {
			entry["aliases"] = aliases
		}
		if try, ok := entry["try"].(map[string]any); ok && !replace(try, "do", own["try"]) {
			missing = append(missing, b.file+": "+id+".try")
		}
		delete(texts, id)
	}
	for id := range texts {
		missing = append(missing, b.from+": "+id+", which is no entry of the English")
	}
	return whole, missing, nil
}

func (b book) texts(content string) (map[string]any, error) {
	all, err := readYAML(filepath.Join(content, spanish, b.from))
	if err != nil || b.part == "" {
		return all, err
	}
	part, ok := all[b.part].(map[string]any)
	if !ok {
		return nil, fmt.Errorf("%s/%s: has no part %s", spanish, b.from, b.part)
	}
	return part, nil
}

// replace puts a text, or a list of as many texts, in the place of the English.
func replace(entry map[string]any, field string, text any) bool {
	switch english := entry[field].(type) {
	case string:
		own, ok := text.(string)
		if !ok || strings.TrimSpace(own) == "" {
			return false
		}
		entry[field] = own
	case []any:
		own, ok := text.([]any)
		if !ok || len(own) != len(english) {
			return false
		}
		entry[field] = own
	default:
		return false
	}
	return true
}

func readJSON(path string, into any) error {
	text, err := os.ReadFile(path)
	if err != nil {
		return err
	}
	return json.Unmarshal(text, into)
}

func writeJSON(path string, tree any) error {
	text, err := json.MarshalIndent(tree, "", " ")
	if err != nil {
		return err
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return err
	}
	return os.WriteFile(path, append(text, '\n'), 0o644)
}

func readYAML(path string) (map[string]any, error) {
	text, err := os.ReadFile(path)
	if err != nil {
		return nil, err
	}
	var tree map[string]any
	if err := yaml.UnmarshalWithOptions(text, &tree, yaml.Strict()); err != nil {
		return nil, fmt.Errorf("%s: %s", path, yaml.FormatError(err, false, true))
	}
	return tree, nil
}
