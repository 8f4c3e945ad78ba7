package main

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"hash"
	"os"
	"path/filepath"

	"github.com/goccy/go-yaml"
)

// fingerprint sums the content files as they are read, in reading order.
type fingerprint struct{ sum hash.Hash }

func (f *fingerprint) add(name string, text []byte) {
	if f.sum == nil {
		f.sum = sha256.New()
	}
	fmt.Fprintf(f.sum, "%s %d\n", name, len(text))
	f.sum.Write(text)
}

// String is short enough to read aloud; twelve digits make a clash between two
// releases of one product no concern.
func (f *fingerprint) String() string {
	if f.sum == nil {
		return ""
	}
	return hex.EncodeToString(f.sum.Sum(nil))[:12]
}

// readYAML returns a file as the tree that engine/shape takes.
func readYAML(path string, sums *fingerprint) (any, error) {
	text, err := os.ReadFile(path)
	if err != nil {
		return nil, err
	}
	sums.add(filepath.Base(filepath.Dir(path))+"/"+filepath.Base(path), text)
	var tree any
	if err := yaml.UnmarshalWithOptions(text, &tree, yaml.Strict()); err != nil {
		return nil, fmt.Errorf("%s: %s", path, yaml.FormatError(err, false, true))
	}
	plain, err := plainTree(tree)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", path, err)
	}
	return plain, nil
}

// plainTree makes every number a float64, as decoded JSON has them.
func plainTree(tree any) (any, error) {
	switch v := tree.(type) {
	case map[string]any:
		for name, item := range v {
			plain, err := plainTree(item)
			if err != nil {
				return nil, err
			}
			v[name] = plain
		}
		return v, nil
	case []any:
		for i, item := range v {
			plain, err := plainTree(item)
			if err != nil {
				return nil, err
			}
			v[i] = plain
		}
		return v, nil
	case uint64:
		return float64(v), nil
	case int64:
		return float64(v), nil
	case int:
		return float64(v), nil
	case float64, string, bool, nil:
		return v, nil
	}
	return nil, fmt.Errorf("a value of type %T: use text, numbers, true, false, lists and maps only", tree)
}
