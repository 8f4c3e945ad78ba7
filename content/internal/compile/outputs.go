package main

import (
	"encoding/json"
	"fmt"
	"maps"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
)

// outputs are the files to write, by path relative to the content folder, and
// what the pointers in the Go files of each folder point to.
type outputs struct {
	files map[string][]byte
	pools map[string]pool
}

func (o outputs) json(path string, tree any) error {
	text, err := json.MarshalIndent(tree, "", " ")
	o.files[path] = append(text, '\n')
	return err
}

// golang adds a Go file that declares one variable.
func (o outputs) golang(at, pkg, name, folder string, value any) (err error) {
	in := path.Dir(at)
	if o.pools[in] == nil {
		o.pools[in] = pool{}
	}
	o.files[at], err = goFile(pkg, name, folder, value, o.pools[in])
	return err
}

// list adds a Go file that declares one variable for what others declare in parts.
func (o outputs) list(at, pkg, name, folder string, parts []string) (err error) {
	o.files[at], err = formatted(heading(pkg, folder) + fmt.Sprintf("import \"slices\"\n\nvar %s = slices.Concat(%s)\n", name, strings.Join(parts, ", ")))
	return err
}

// close adds what only the whole can tell: the version, and the pools.
func (o outputs) close(version string) (err error) {
	if o.files["version_gen.go"], err = versionFile(version); err != nil {
		return err
	}
	for in, shared := range o.pools {
		if len(shared) == 0 {
			continue
		}
		pkg := path.Base(in)
		if in == "." {
			pkg = "content"
		}
		if o.files[path.Join(in, "pointed_gen.go")], err = shared.goFile(pkg); err != nil {
			return err
		}
	}
	return nil
}

// save writes every file, and removes what an earlier run wrote and this one did not.
func (o outputs) save(content string) error {
	for _, name := range slices.Sorted(maps.Keys(o.files)) {
		full := filepath.Join(content, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(full), 0o755); err != nil {
			return err
		}
		if err := os.WriteFile(full, o.files[name], 0o644); err != nil {
			return err
		}
	}
	old, err := o.left(content)
	if err != nil {
		return err
	}
	for _, name := range old {
		if err := os.Remove(filepath.Join(content, filepath.FromSlash(name))); err != nil {
			return err
		}
	}
	return nil
}

// left lists the Go files in the folders written to that nothing writes any more.
func (o outputs) left(content string) ([]string, error) {
	var old []string
	for in := range o.pools {
		found, err := filepath.Glob(filepath.Join(content, filepath.FromSlash(in), "*_gen.go"))
		if err != nil {
			return nil, err
		}
		for _, full := range found {
			if name := path.Join(in, filepath.Base(full)); o.files[name] == nil {
				old = append(old, name)
			}
		}
	}
	return old, nil
}
