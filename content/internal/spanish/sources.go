package main

import "path/filepath"

// source is what of a source is said in Spanish: how far it was read, and a title
// or a publisher only where they are words of ours and no one's name.
type source struct {
	Seen      string `json:"seen"`
	Title     string `json:"title,omitempty"`
	Publisher string `json:"publisher,omitempty"`
}

// laySources returns the Spanish of every source by its id, and what has none.
// The rest of a source is the same in every language and is not written twice.
func laySources(content string) (all map[string]source, missing []string, err error) {
	var english []struct{ ID string }
	if err := readJSON(filepath.Join(content, generated, "sources.json"), &english); err != nil {
		return nil, nil, err
	}
	texts, err := readYAML(filepath.Join(content, spanish, "sources.yaml"))
	if err != nil {
		return nil, nil, err
	}
	all = map[string]source{}
	for _, one := range english {
		own := sourceOf(texts[one.ID])
		if own.Seen == "" {
			missing = append(missing, "sources.json: "+one.ID)
			continue
		}
		all[one.ID] = own
		delete(texts, one.ID)
	}
	for id := range texts {
		missing = append(missing, "sources.yaml: "+id+", which is no entry of the English")
	}
	return all, missing, nil
}

// sourceOf reads an entry: a sentence, or a sentence with the words of ours beside it.
func sourceOf(entry any) source {
	if seen, is := entry.(string); is {
		return source{Seen: seen}
	}
	fields, _ := entry.(map[string]any)
	text := func(name string) string { said, _ := fields[name].(string); return said }
	return source{Seen: text("seen"), Title: text("title"), Publisher: text("publisher")}
}
