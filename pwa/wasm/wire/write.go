package wire

import (
	"math"
	"unsafe"
)

// write makes a plain tree of the value at p.
func (l *layout) write(p unsafe.Pointer) any {
	switch l.kind {
	case text:
		return *(*string)(p)
	case truth:
		return *(*bool)(p)
	case number:
		return plain(*(*float64)(p))
	case whole:
		return float64(*(*int)(p))
	case counting:
		return float64(*(*uint64)(p))
	case pair:
		two := (*[2]float64)(p)
		return []any{plain(two[0]), plain(two[1])}
	case pointer:
		if to := *(*unsafe.Pointer)(p); to != nil {
			return l.elem.write(to)
		}
		return nil
	case list:
		return l.elem.writeList((*slice)(p))
	case byName:
		tree := map[string]any{}
		l.each(p, func(name string, value unsafe.Pointer) { tree[name] = l.elem.write(value) })
		return tree
	}
	return l.writeObject(p)
}

func (l *layout) writeList(s *slice) any {
	tree := make([]any, s.len)
	for i := range tree {
		tree[i] = l.write(unsafe.Add(s.data, uintptr(i)*l.size))
	}
	return tree
}

func (l *layout) writeObject(p unsafe.Pointer) any {
	tree := map[string]any{}
	for i := range l.fields {
		f := &l.fields[i]
		at := unsafe.Add(p, f.offset)
		if f.need != absent || !f.is.empty(at) {
			tree[f.name] = f.is.write(at)
		}
	}
	return tree
}

// empty follows encoding/json: an empty list is left out like a zero.
func (l *layout) empty(p unsafe.Pointer) bool {
	switch l.kind {
	case text:
		return *(*string)(p) == ""
	case truth:
		return !*(*bool)(p)
	case number:
		return *(*float64)(p) == 0
	case whole, counting:
		return *(*uint64)(p) == 0
	case pointer:
		return *(*unsafe.Pointer)(p) == nil
	case list:
		return (*slice)(p).len == 0
	}
	return false
}

// plain is a number as a tree holds it: null where it is not finite, for neither
// JSON nor a reader can use that.
func plain(x float64) any {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return nil
	}
	return x
}
