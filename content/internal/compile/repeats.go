package main

import (
	"reflect"
	"strconv"
	"strings"
)

// repeats finds what stands more than once in a file. Everything is spelled twice:
// the first time it is counted, the second time what repeats is declared where it
// is first met, and named wherever it stands.
type repeats struct {
	name     string            // of the file's variable, with which the others begin
	times    map[string]int    // how often a text stands there
	counted  map[string]string // nil while counting, then a text's variable
	declared string
}

// once spells a composite literal by spell, or by the name of the variable that
// holds the same. What fits on a line is never worth one.
func (r *repeats) once(w *literal, v reflect.Value, spell func() string) string {
	if r == nil {
		return spell()
	}
	plainly := literal{pkg: w.pkg, imports: map[string]bool{}, pool: pool{}}
	text := plainly.value(v, true)
	switch {
	case !strings.Contains(text, "\n"):
	case r.counted == nil:
		r.times[text]++
		if r.times[text] > 1 {
			return text // what is in it was counted when it was met first
		}
	case r.counted[text] != "":
		return r.counted[text]
	case r.times[text] > 1:
		return r.declare(text, v.Type(), spell())
	}
	return spell()
}

func (r *repeats) declare(text string, t reflect.Type, spelled string) string {
	kind := t.Name()
	if t.Kind() == reflect.Slice {
		kind = t.Elem().Name() + "s"
	}
	name := r.name + kind + strconv.Itoa(len(r.counted)+1)
	r.counted[text] = name
	r.declared += "\nvar " + name + " = " + spelled + "\n"
	return name
}
