package main

import (
	"math"
	"os"
	"strings"

	"lintel/content/internal/measured"
	"lintel/engine/shape"

	"github.com/goccy/go-yaml"
)

// write stores the results as content.
func write(path string, out measured.File) error {
	text, err := yaml.Marshal(wholeNumbers(shape.Encode(out)))
	if err != nil {
		return err
	}
	head := []string{
		"# What simulated fires made of the rules. Written by content/internal/fit; the",
		"# numbers are measured and are never edited by hand.",
		"",
	}
	return os.WriteFile(path, append([]byte(strings.Join(head, "\n")), text...), 0o644)
}

// wholeNumbers writes counts as counts, not as 406.0.
func wholeNumbers(tree any) any {
	switch v := tree.(type) {
	case map[string]any:
		for name, item := range v {
			v[name] = wholeNumbers(item)
		}
	case []any:
		for i, item := range v {
			v[i] = wholeNumbers(item)
		}
	case float64:
		if v == math.Trunc(v) {
			return int64(v)
		}
	}
	return tree
}
