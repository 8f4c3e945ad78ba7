package main

import (
	"fmt"
	"path"
	"path/filepath"
	"reflect"
	"strings"

	"lintel/engine/shape"
)

// compile reads every table under the content folder and returns what to write.
func compile(content string) (outputs, error) {
	to := outputs{files: map[string][]byte{}, pools: map[string]pool{}}
	values := map[string]any{}
	var sums fingerprint
	for _, t := range tables {
		files, err := t.read(content, &sums)
		if err != nil {
			return to, err
		}
		whole, err := t.join(files)
		if err != nil {
			return to, err
		}
		values[t.folder] = whole
		for _, out := range t.outputs {
			if err := out.write(t.folder, whole, files, to); err != nil {
				return to, fmt.Errorf("%s: %w", t.folder, err)
			}
		}
	}
	if err := checkRules(values); err != nil {
		return to, err
	}
	all, err := catalogue(values)
	if err != nil {
		return to, err
	}
	if err := writeSentences(all, to); err != nil {
		return to, err
	}
	return to, to.close(sums.String())
}

// table is one folder of content: what one file of it holds, and where it goes.
type table struct {
	folder  string // under content
	like    any    // a slice or map: a file is one element or some of them; else the folder has one file
	outputs []output
}

// file is one file of a folder, read.
type file struct {
	path  string
	value reflect.Value
}

// stem is its name without folder and extension.
func (f file) stem() string { return strings.TrimSuffix(filepath.Base(f.path), ".yaml") }

func (t table) read(content string, sums *fingerprint) ([]file, error) {
	paths, err := filepath.Glob(filepath.Join(content, t.folder, "*.yaml"))
	if err != nil {
		return nil, err
	}
	kind := reflect.TypeOf(t.like)
	if len(paths) > 1 && kind.Kind() == reflect.Struct {
		return nil, fmt.Errorf("%s: this folder has one file: join it to %s", paths[1], paths[0])
	}
	files := make([]file, len(paths))
	for i, path := range paths {
		tree, err := readYAML(path, sums)
		if err != nil {
			return nil, err
		}
		if _, single := tree.(map[string]any); single && kind.Kind() == reflect.Slice {
			tree = []any{tree}
		}
		value := reflect.New(kind)
		if err := shape.Decode(tree, value.Interface()); err != nil {
			return nil, fmt.Errorf("%s: %w", path, err)
		}
		files[i] = file{path: path, value: value.Elem()}
	}
	return files, nil
}

// join adds up what the files of a folder hold.
func (t table) join(files []file) (any, error) {
	whole := reflect.New(reflect.TypeOf(t.like)).Elem()
	for _, f := range files {
		switch whole.Kind() {
		case reflect.Slice:
			whole.Set(reflect.AppendSlice(whole, f.value))
		case reflect.Map:
			if err := joinMap(whole, f); err != nil {
				return nil, err
			}
		default:
			whole.Set(f.value)
		}
	}
	return whole.Interface(), nil
}

func joinMap(whole reflect.Value, f file) error {
	if whole.IsNil() {
		whole.Set(reflect.MakeMap(whole.Type()))
	}
	for each := f.value.MapRange(); each.Next(); {
		if whole.MapIndex(each.Key()).IsValid() {
			return fmt.Errorf("%s: %s is given in another file too", f.path, each.Key())
		}
		whole.SetMapIndex(each.Key(), each.Value())
	}
	return nil
}

// output is where a table is written to.
type output struct {
	path string                 // relative to content; .go or .json
	pkg  string                 // of a Go file
	name string                 // of its variable
	pick func(any) (any, error) // what of the table it holds; nil for all
	each bool                   // a Go file for each file of the folder, and in path a list of their variables
}

func (o output) write(folder string, whole any, files []file, to outputs) error {
	if o.each {
		return o.writeEach(folder, files, to)
	}
	value, err := o.picked(whole)
	if err != nil {
		return err
	}
	if path.Ext(o.path) == ".json" {
		return to.json(o.path, shape.Encode(value))
	}
	return to.golang(o.path, o.pkg, o.name, folder, value)
}

func (o output) picked(value any) (any, error) {
	if o.pick == nil {
		return value, nil
	}
	return o.pick(value)
}

// writeEach writes a file of its own for each file of the folder: families_box_gen.go
// declares familiesBox. The list is declared in the output's own path.
func (o output) writeEach(folder string, files []file, to outputs) error {
	var names []string
	for _, f := range files {
		value, err := o.picked(f.value.Interface())
		if err != nil {
			return err
		}
		stem := f.stem()
		name := o.name + strings.ToUpper(stem[:1]) + stem[1:]
		path := strings.Replace(o.path, "_gen.go", "_"+stem+"_gen.go", 1)
		if err := to.golang(path, o.pkg, name, folder+"/"+stem+".yaml", value); err != nil {
			return err
		}
		names = append(names, name)
	}
	return to.list(o.path, o.pkg, o.name, folder, names)
}
