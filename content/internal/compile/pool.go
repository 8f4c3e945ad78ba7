package main

import (
	"maps"
	"reflect"
	"slices"
	"strings"
)

// pool is what the pointers in a package's generated literals point to: numbers
// and truths, each declared once as a variable. The linker lays out the address of
// a variable, where new(value) would be code that runs at start. Nothing may write
// through such a pointer, for others share what it points to.
type pool map[string]string // a variable's name to its type and value

var inAName = strings.NewReplacer(".", "_", "-", "Minus", "+", "", "true", "True", "false", "False")

// name returns the variable that holds v: float0_5, int2, boolTrue.
func (p pool) name(v reflect.Value) string {
	kind := v.Type().String()
	if kind != "float64" && kind != "int" && kind != "bool" {
		panic("compile: no pointer to a " + kind)
	}
	name := strings.TrimSuffix(kind, "64") + inAName.Replace(plain(v))
	p[name] = kind + " = " + plain(v)
	return name
}

func (p pool) goFile(pkg string) ([]byte, error) {
	text := heading(pkg, "") + "// What the pointers in the generated literals point to.\nvar (\n"
	for _, name := range slices.Sorted(maps.Keys(p)) {
		text += name + " " + p[name] + "\n"
	}
	return formatted(text + ")\n")
}
