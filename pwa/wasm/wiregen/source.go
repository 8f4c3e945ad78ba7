package main

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"reflect"
	"strings"
)

// source is what one Go package declares, in the order of its files.
type source struct {
	name    string
	structs []structure
	named   map[string]ast.Expr // type name -> what stands behind it
	words   []enumeration
}

// structure is one exported struct.
type structure struct {
	name, doc string
	fields    []member
	embeds    []string
	frame     bool // numbers only, no json names: a part of a frame
}

// frameParts are the structs that cross as bare numbers.
var frameParts = map[string]bool{"FrameHeader": true, "CompartmentFrame": true, "OpeningFrame": true}

// member is one field of a struct.
type member struct {
	goName, name, doc string
	omit              bool
	typ               ast.Expr
}

// enumeration is a named string type with its constants.
type enumeration struct {
	name, doc string
	words     []string
}

// readPackage parses the Go files of a folder, tests left out.
func readPackage(root, name string) (source, error) {
	src := source{name: name, named: map[string]ast.Expr{}}
	paths, err := filepath.Glob(filepath.Join(root, name, "*.go"))
	if err != nil || len(paths) == 0 {
		return src, fmt.Errorf("wiregen: %s holds no Go files", filepath.Join(root, name))
	}
	for _, path := range paths {
		if strings.HasSuffix(path, "_test.go") {
			continue
		}
		text, err := os.ReadFile(path)
		if err != nil {
			return src, err
		}
		file, err := parser.ParseFile(token.NewFileSet(), path, text, parser.ParseComments)
		if err != nil {
			return src, err
		}
		for _, decl := range file.Decls {
			src.add(decl)
		}
	}
	return src, nil
}

func (s *source) add(decl ast.Decl) {
	general, ok := decl.(*ast.GenDecl)
	if !ok {
		return
	}
	for _, spec := range general.Specs {
		switch spec := spec.(type) {
		case *ast.TypeSpec:
			s.addType(spec, docOf(spec.Doc, general.Doc))
		case *ast.ValueSpec:
			s.addWord(spec)
		}
	}
}

func (s *source) addType(spec *ast.TypeSpec, doc string) {
	if !spec.Name.IsExported() {
		return
	}
	s.named[spec.Name.Name] = spec.Type
	switch kind := spec.Type.(type) {
	case *ast.StructType:
		s.structs = append(s.structs, readStruct(spec.Name.Name, doc, kind))
	case *ast.Ident:
		if kind.Name == "string" {
			s.words = append(s.words, enumeration{name: spec.Name.Name, doc: doc})
		}
	}
}

// addWord adds `Alpha Side = "A"` to the enumeration Side.
func (s *source) addWord(spec *ast.ValueSpec) {
	typ, ok := spec.Type.(*ast.Ident)
	if !ok || len(spec.Values) != 1 {
		return
	}
	literal, ok := spec.Values[0].(*ast.BasicLit)
	if !ok || literal.Kind != token.STRING {
		return
	}
	for i := range s.words {
		if s.words[i].name == typ.Name {
			s.words[i].words = append(s.words[i].words, strings.Trim(literal.Value, `"`))
		}
	}
}

func readStruct(name, doc string, kind *ast.StructType) structure {
	st := structure{name: name, doc: doc, frame: frameParts[name]}
	for _, field := range kind.Fields.List {
		if len(field.Names) == 0 {
			if embedded, ok := field.Type.(*ast.Ident); ok {
				st.embeds = append(st.embeds, embedded.Name)
			}
			continue
		}
		m := member{goName: field.Names[0].Name, typ: field.Type, doc: docOf(field.Comment, field.Doc)}
		if field.Tag != nil {
			tag := reflect.StructTag(strings.Trim(field.Tag.Value, "`")).Get("json")
			name, rest, _ := strings.Cut(tag, ",")
			m.name, m.omit = name, rest == "omitempty" || rest == "omitzero"
		}
		st.fields = append(st.fields, m)
	}
	return st
}

// docOf is a comment on one line.
func docOf(groups ...*ast.CommentGroup) string {
	for _, group := range groups {
		if group != nil {
			return strings.Join(strings.Fields(group.Text()), " ")
		}
	}
	return ""
}
