package shape

import (
	"math"
	"reflect"
)

// Encode turns a struct, map, slice or scalar into a plain tree. A number that
// is not finite becomes null, for neither JSON nor a reader can use it.
func Encode(v any) any { return encode(reflect.ValueOf(v)) }

func encode(v reflect.Value) any {
	switch v.Kind() {
	case reflect.Invalid:
		return nil
	case reflect.Pointer, reflect.Interface:
		if v.IsNil() {
			return nil
		}
		return encode(v.Elem())
	case reflect.Struct:
		return encodeStruct(v)
	case reflect.Slice, reflect.Array:
		list := make([]any, v.Len())
		for i := range list {
			list[i] = encode(v.Index(i))
		}
		return list
	case reflect.Map:
		object := make(map[string]any, v.Len())
		for each := v.MapRange(); each.Next(); {
			object[each.Key().String()] = encode(each.Value())
		}
		return object
	case reflect.String:
		return v.String()
	case reflect.Bool:
		return v.Bool()
	case reflect.Int, reflect.Int64:
		return float64(v.Int())
	case reflect.Uint64:
		return float64(v.Uint())
	case reflect.Float64:
		if number := v.Float(); !math.IsNaN(number) && !math.IsInf(number, 0) {
			return number
		}
		return nil
	}
	panic("shape: no way to encode " + v.Type().String())
}

func encodeStruct(v reflect.Value) any {
	object := make(map[string]any, v.NumField())
	for _, f := range fieldsOf(v.Type()) {
		value := v.Field(f.index)
		if f.omit && empty(value) {
			continue
		}
		object[f.name] = encode(value)
	}
	return object
}

// empty follows encoding/json: an empty slice or map is left out like a zero.
func empty(v reflect.Value) bool {
	if v.Kind() == reflect.Slice || v.Kind() == reflect.Map {
		return v.Len() == 0
	}
	return v.IsZero()
}
