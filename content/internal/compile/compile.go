package main

import (
	"encoding/json"
	"fmt"
	"path"
	"path/filepath"
	"reflect"

	"lintel/engine/shape"
)

// compile reads every table under the content folder and returns the files to
// write, by path relative to that folder.
func compile(content string) (map[string][]byte, error) {
	outputs := map[string][]byte{}
	values := map[string]any{}
	var sums fingerprint
	for _, t := range tables {
		value, err := t.read(content, &sums)
		if err != nil {
			return nil, err
		}
		values[t.folder] = value
		for _, out := range t.outputs {
			if err := out.write(t.folder, value, outputs); err != nil {
				return nil, fmt.Errorf("%s: %w", t.folder, err)
			}
		}
	}
	if err := checkRules(values); err != nil {
		return nil, err
	}
	all, err := catalogue(values)
	if err != nil {
		return nil, err
	}
	if err := writeSentences(all, outputs); err != nil {
		return nil, err
	}
	version, err := versionFile(sums.String())
	if err != nil {
		return nil, err
	}
	outputs["version_gen.go"] = version
	return outputs, nil
}

// table is one folder of content: what one file of it holds, and where it goes.
type table struct {
	folder  string // under content
	like    any    // a slice or map: a file is one element or some of them; else the folder has one file
	outputs []output
}

// output is one file that a table is written to.
type output struct {
	path string                 // relative to content; .go or .json
	pkg  string                 // of a Go file
	name string                 // of its variable
	pick func(any) (any, error) // what of the table it holds; nil for all
}

func (t table) read(content string, sums *fingerprint) (any, error) {
	files, err := filepath.Glob(filepath.Join(content, t.folder, "*.yaml"))
	if err != nil {
		return nil, err
	}
	kind := reflect.TypeOf(t.like)
	all := reflect.New(kind)
	for i, file := range files {
		if i > 0 && kind.Kind() == reflect.Struct {
			return nil, fmt.Errorf("%s: this folder has one file: join it to %s", file, files[0])
		}
		tree, err := readYAML(file, sums)
		if err != nil {
			return nil, err
		}
		if _, single := tree.(map[string]any); single && kind.Kind() == reflect.Slice {
			tree = []any{tree}
		}
		part := reflect.New(kind)
		if err := shape.Decode(tree, part.Interface()); err != nil {
			return nil, fmt.Errorf("%s: %w", file, err)
		}
		if err := join(all, part); err != nil {
			return nil, fmt.Errorf("%s: %w", file, err)
		}
	}
	return all.Elem().Interface(), nil
}

// join adds what one file holds to what went before.
func join(all, part reflect.Value) error {
	switch all.Elem().Kind() {
	case reflect.Slice:
		all.Elem().Set(reflect.AppendSlice(all.Elem(), part.Elem()))
	case reflect.Map:
		if all.Elem().IsNil() {
			all.Elem().Set(reflect.MakeMap(all.Elem().Type()))
		}
		for each := part.Elem().MapRange(); each.Next(); {
			if all.Elem().MapIndex(each.Key()).IsValid() {
				return fmt.Errorf("%s is given in another file too", each.Key())
			}
			all.Elem().SetMapIndex(each.Key(), each.Value())
		}
	default:
		all.Elem().Set(part.Elem())
	}
	return nil
}

func (o output) write(folder string, value any, outputs map[string][]byte) error {
	if o.pick != nil {
		picked, err := o.pick(value)
		if err != nil {
			return err
		}
		value = picked
	}
	if path.Ext(o.path) == ".json" {
		text, err := json.MarshalIndent(shape.Encode(value), "", " ")
		outputs[o.path] = append(text, '\n')
		return err
	}
	source, err := goFile(o.pkg, o.name, folder, value)
	outputs[o.path] = source
	return err
}
