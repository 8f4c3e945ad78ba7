package shape

import (
	"reflect"
	"strings"
)

// field is one struct field as its json tag names it.
type field struct {
	name     string
	index    int
	optional bool
	omit     bool // leave out when zero
}

// fieldsOf lists the tagged fields of a struct type.
func fieldsOf(t reflect.Type) []field {
	fields := make([]field, 0, t.NumField())
	for i := range t.NumField() {
		tag, tagged := t.Field(i).Tag.Lookup("json")
		if !tagged || tag == "-" {
			continue
		}
		name, rest, _ := strings.Cut(tag, ",")
		omit := rest == "omitempty"
		fields = append(fields, field{
			name:     name,
			index:    i,
			omit:     omit,
			optional: omit || t.Field(i).Type.Kind() == reflect.Pointer,
		})
	}
	return fields
}
