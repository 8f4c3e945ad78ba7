package shape

import (
	"math"
	"reflect"
	"sort"
	"strconv"

	"lintel/engine"
)

// Decode fills dst, a pointer to a struct, slice or map, from tree. The error is
// an *engine.Problem whose Where is the path to the first fault.
func Decode(tree any, dst any) error {
	target := reflect.ValueOf(dst)
	if target.Kind() != reflect.Pointer || target.IsNil() {
		panic("shape: Decode needs a pointer")
	}
	return decode("", tree, target.Elem())
}

func decode(path string, tree any, dst reflect.Value) error {
	switch dst.Kind() {
	case reflect.Pointer:
		return decodePointer(path, tree, dst)
	case reflect.Struct:
		return decodeStruct(path, tree, dst)
	case reflect.Slice:
		return decodeSlice(path, tree, dst)
	case reflect.Array:
		return decodeArray(path, tree, dst)
	case reflect.Map:
		return decodeMap(path, tree, dst)
	case reflect.Interface:
		if tree != nil {
			dst.Set(reflect.ValueOf(tree))
		}
		return nil
	}
	return decodeScalar(path, tree, dst)
}

func decodePointer(path string, tree any, dst reflect.Value) error {
	if tree == nil {
		dst.SetZero()
		return nil
	}
	dst.Set(reflect.New(dst.Type().Elem()))
	return decode(path, tree, dst.Elem())
}

func decodeStruct(path string, tree any, dst reflect.Value) error {
	object, ok := tree.(map[string]any)
	if !ok {
		return engine.WrongType(path, tree, "an object")
	}
	fields := fieldsOf(dst.Type())
	if err := refuseUnknown(path, object, fields); err != nil {
		return err
	}
	for _, f := range fields {
		value, present := object[f.name]
		if !present || value == nil {
			if !f.optional {
				return engine.Bad(engine.Under(path, f.name), "is missing", "give it a value")
			}
			continue
		}
		if err := decode(engine.Under(path, f.name), value, dst.Field(f.index)); err != nil {
			return err
		}
	}
	return nil
}

func refuseUnknown(path string, object map[string]any, fields []field) error {
	known := make(map[string]bool, len(fields))
	for _, f := range fields {
		known[f.name] = true
	}
	var strange []string
	for name := range object {
		if !known[name] {
			strange = append(strange, name)
		}
	}
	if len(strange) == 0 {
		return nil
	}
	sort.Strings(strange)
	list := ""
	for i, f := range fields {
		if i > 0 {
			list += ", "
		}
		list += f.name
	}
	return engine.Bad(engine.Under(path, strange[0]), "is not a field known here", "remove it, or use one of "+list)
}

func decodeSlice(path string, tree any, dst reflect.Value) error {
	list, ok := tree.([]any)
	if !ok {
		return engine.WrongType(path, tree, "a list")
	}
	dst.Set(reflect.MakeSlice(dst.Type(), len(list), len(list)))
	for i, item := range list {
		if err := decodeItem(engine.Nth(path, i), item, dst.Index(i)); err != nil {
			return err
		}
	}
	return nil
}

// decodeItem refuses a null in a list of things that cannot be absent.
func decodeItem(path string, item any, dst reflect.Value) error {
	if item == nil && dst.Kind() != reflect.Pointer && dst.Kind() != reflect.Interface {
		return engine.Bad(path, "is null", "remove it or give it a value")
	}
	return decode(path, item, dst)
}

func decodeArray(path string, tree any, dst reflect.Value) error {
	list, ok := tree.([]any)
	if !ok {
		return engine.WrongType(path, tree, "a list")
	}
	if len(list) != dst.Len() {
		return engine.Bad(path, "has "+strconv.Itoa(len(list))+" values", "give exactly "+strconv.Itoa(dst.Len()))
	}
	for i, item := range list {
		if err := decodeItem(engine.Nth(path, i), item, dst.Index(i)); err != nil {
			return err
		}
	}
	return nil
}

func decodeMap(path string, tree any, dst reflect.Value) error {
	object, ok := tree.(map[string]any)
	if !ok {
		return engine.WrongType(path, tree, "an object")
	}
	names := make([]string, 0, len(object))
	for name := range object {
		names = append(names, name)
	}
	sort.Strings(names)
	dst.Set(reflect.MakeMapWithSize(dst.Type(), len(object)))
	for _, name := range names {
		value := reflect.New(dst.Type().Elem()).Elem()
		if err := decodeItem(engine.Under(path, name), object[name], value); err != nil {
			return err
		}
		dst.SetMapIndex(keyOf(dst.Type().Key(), name), value)
	}
	return nil
}

// keyOf is a map's key of that type. reflect's own Convert would do it too, and
// costs the phone 7 kB (measured with brotli 11 on Go 1.26).
func keyOf(t reflect.Type, name string) reflect.Value {
	key := reflect.New(t).Elem()
	key.SetString(name)
	return key
}

func decodeScalar(path string, tree any, dst reflect.Value) error {
	switch dst.Kind() {
	case reflect.String:
		text, ok := tree.(string)
		if !ok {
			return engine.WrongType(path, tree, "text")
		}
		dst.SetString(text)
	case reflect.Bool:
		truth, ok := tree.(bool)
		if !ok {
			return engine.WrongType(path, tree, "true or false")
		}
		dst.SetBool(truth)
	case reflect.Float64:
		number, err := finite(path, tree)
		if err != nil {
			return err
		}
		dst.SetFloat(number)
	case reflect.Int, reflect.Int64:
		number, err := whole(path, tree)
		if err != nil {
			return err
		}
		dst.SetInt(int64(number))
	case reflect.Uint64:
		number, err := whole(path, tree)
		if err != nil {
			return err
		}
		if number < 0 {
			return engine.Bad(path, "is negative", "give a whole number of 0 or more")
		}
		dst.SetUint(uint64(number))
	default:
		panic("shape: no way to decode into " + dst.Type().String())
	}
	return nil
}

func finite(path string, tree any) (float64, error) {
	number, ok := tree.(float64)
	if !ok {
		return 0, engine.WrongType(path, tree, "a number")
	}
	if math.IsNaN(number) || math.IsInf(number, 0) {
		return 0, engine.Bad(path, "is not a finite number", "give a finite number")
	}
	return number, nil
}

// largestWhole is 2^53, above which a float64 no longer holds every integer.
const largestWhole = 1 << 53

func whole(path string, tree any) (float64, error) {
	number, err := finite(path, tree)
	if err != nil {
		return 0, err
	}
	if number != math.Trunc(number) || math.Abs(number) > largestWhole {
		return 0, engine.Bad(path, "is "+engine.Decimal(number, 6), "give a whole number")
	}
	return number, nil
}
