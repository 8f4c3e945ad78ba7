// Command compile turns the content that people write (YAML under content/) into
// what programs read: Go literals in content/*_gen.go, so that no YAML reader
// travels to the phone, and JSON under pwa/src/generated for the field book's
// text. It is run by `go generate ./content`, with content as its folder.
package main

import (
	"fmt"
	"os"
	"path/filepath"
	"sort"
)

func main() {
	if err := run("."); err != nil {
		fmt.Fprintln(os.Stderr, "content: "+err.Error())
		os.Exit(1)
	}
}

func run(content string) error {
	outputs, err := compile(content)
	if err != nil {
		return err
	}
	paths := make([]string, 0, len(outputs))
	for path := range outputs {
		paths = append(paths, path)
	}
	sort.Strings(paths)
	for _, path := range paths {
		full := filepath.Join(content, filepath.FromSlash(path))
		if err := os.MkdirAll(filepath.Dir(full), 0o755); err != nil {
			return err
		}
		if err := os.WriteFile(full, outputs[path], 0o644); err != nil {
			return err
		}
	}
	return nil
}
