package wire

import (
	"math"
	"slices"
	"strconv"
	"unsafe"

	"lintel/engine"
)

// read fills the value at p from a tree. Path leads to it.
func (l *layout) read(path string, tree any, p unsafe.Pointer) error {
	switch l.kind {
	case text:
		return fill(path, tree, "text", (*string)(p))
	case truth:
		return fill(path, tree, "true or false", (*bool)(p))
	case number:
		return readNumber(path, tree, (*float64)(p))
	case whole, counting:
		return l.readWhole(path, tree, p)
	case pair:
		return readPair(path, tree, p)
	case pointer:
		to := l.elem.alloc(1)
		*(*unsafe.Pointer)(p) = to
		return l.elem.read(path, tree, to)
	case list:
		return l.elem.readList(path, tree, (*slice)(p))
	case object:
		return l.readObject(path, tree, p)
	}
	panic("wire: " + path + " is of a kind that is only written")
}

func (l *layout) readObject(path string, tree any, p unsafe.Pointer) error {
	given, ok := tree.(map[string]any)
	if !ok {
		return engine.WrongType(path, tree, "an object")
	}
	if err := l.refuseUnknown(path, given); err != nil {
		return err
	}
	for i := range l.fields {
		f := &l.fields[i]
		value := given[f.name]
		if value == nil {
			if f.need == must {
				return engine.Bad(engine.Under(path, f.name), "is missing", "give it a value")
			}
			continue
		}
		if err := f.is.read(engine.Under(path, f.name), value, unsafe.Add(p, f.offset)); err != nil {
			return err
		}
	}
	return nil
}

func (l *layout) refuseUnknown(path string, given map[string]any) error {
	var strange []string
	for name := range given {
		if !slices.ContainsFunc(l.fields, func(f field) bool { return f.name == name }) {
			strange = append(strange, name)
		}
	}
	if len(strange) == 0 {
		return nil
	}
	known := ""
	for i := range l.fields {
		if i > 0 {
			known += ", "
		}
		known += l.fields[i].name
	}
	return engine.Bad(engine.Under(path, slices.Min(strange)), "is not a field known here", "remove it, or use one of "+known)
}

func (l *layout) readList(path string, tree any, s *slice) error {
	given, ok := tree.([]any)
	if !ok {
		return engine.WrongType(path, tree, "a list")
	}
	*s = slice{data: l.alloc(len(given)), len: len(given), cap: len(given)}
	for i, value := range given {
		if value == nil && l.kind != pointer {
			return engine.Bad(engine.Nth(path, i), "is null", "remove it or give it a value")
		}
		if err := l.read(engine.Nth(path, i), value, unsafe.Add(s.data, uintptr(i)*l.size)); err != nil {
			return err
		}
	}
	return nil
}

func readPair(path string, tree any, p unsafe.Pointer) error {
	var numbers []float64
	if err := ofNumber.readList(path, tree, (*slice)(unsafe.Pointer(&numbers))); err != nil {
		return err
	}
	if len(numbers) != 2 {
		return engine.Bad(path, "has "+strconv.Itoa(len(numbers))+" values", "give exactly 2")
	}
	*(*[2]float64)(p) = [2]float64(numbers)
	return nil
}

func fill[T string | bool](path string, tree any, want string, p *T) error {
	value, ok := tree.(T)
	if !ok {
		return engine.WrongType(path, tree, want)
	}
	*p = value
	return nil
}

func readNumber(path string, tree any, p *float64) error {
	x, ok := tree.(float64)
	if !ok {
		return engine.WrongType(path, tree, "a number")
	}
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return engine.Bad(path, "is not a finite number", "give a finite number")
	}
	*p = x
	return nil
}

// largestWhole is 2^53, above which a float64 no longer holds every integer.
const largestWhole = 1 << 53

func (l *layout) readWhole(path string, tree any, p unsafe.Pointer) error {
	var x float64
	if err := readNumber(path, tree, &x); err != nil {
		return err
	}
	switch {
	case x != math.Trunc(x) || math.Abs(x) > largestWhole:
		return engine.Bad(path, "is "+engine.Decimal(x, 6), "give a whole number")
	case l.kind == whole:
		*(*int)(p) = int(x)
	case x < 0:
		return engine.Bad(path, "is negative", "give a whole number of 0 or more")
	default:
		*(*uint64)(p) = uint64(x)
	}
	return nil
}
