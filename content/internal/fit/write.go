package main

import (
	"os"
	"strings"

	"lintel/engine/shape"

	"github.com/goccy/go-yaml"
)

// write stores the results as content.
func write(path string, out results) error {
	tree := map[string]any{"priors": shape.Encode(out.Priors), "rules": shape.Encode(out.Rules)}
	text, err := yaml.MarshalWithOptions(tree, yaml.Flow(false))
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
