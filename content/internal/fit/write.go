package main

import (
	"os"
	"strings"

	"lintel/content/internal/measured"
	"lintel/engine/shape"

	"github.com/goccy/go-yaml"
)

// write stores the results as content.
func write(path string, out measured.File) error {
	text, err := yaml.Marshal(shape.Encode(out))
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
