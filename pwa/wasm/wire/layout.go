package wire

import "unsafe"

// kind is how a value lies in memory.
type kind uint8

const (
	text     kind = iota // a string of any name
	truth                // bool
	number               // float64
	whole                // int or int64
	counting             // uint64
	pair                 // [2]float64
	object               // a struct
	pointer              // to elem
	list                 // a slice of elem
	byName               // a map from a string to elem; only written
)

// layout describes a type.
type layout struct {
	kind   kind
	size   uintptr
	fields []field                                                  // of an object
	elem   *layout                                                  // of a pointer, list or map
	alloc  func(n int) unsafe.Pointer                               // makes n zero values of this type
	each   func(p unsafe.Pointer, say func(string, unsafe.Pointer)) // goes through a map
}

// field is one field of a struct.
type field struct {
	name   string
	offset uintptr
	is     *layout
	need   need
}

// need says what a field's absence means.
type need uint8

const (
	must   need = iota // absent is a fault
	may                // absent and null are alike; written as null
	absent             // left out when empty
)

// slice is how a slice of anything lies in memory.
type slice struct {
	data     unsafe.Pointer
	len, cap int
}

// The types that Go has of itself.
var (
	ofText     = layout{kind: text, size: unsafe.Sizeof(""), alloc: alloc[string]}
	ofTruth    = layout{kind: truth, size: unsafe.Sizeof(false), alloc: alloc[bool]}
	ofNumber   = layout{kind: number, size: unsafe.Sizeof(0.0), alloc: alloc[float64]}
	ofWhole    = layout{kind: whole, size: unsafe.Sizeof(0), alloc: alloc[int]}
	ofCounting = layout{kind: counting, size: unsafe.Sizeof(uint64(0)), alloc: alloc[uint64]}
	ofPair     = layout{kind: pair, size: unsafe.Sizeof([2]float64{}), alloc: alloc[[2]float64]}
)

func alloc[T any](n int) unsafe.Pointer { return unsafe.Pointer(unsafe.SliceData(make([]T, n))) }

// each goes through a map in any order.
func each[K ~string, T any](p unsafe.Pointer, say func(string, unsafe.Pointer)) {
	for key, value := range *(*map[K]T)(p) {
		say(string(key), unsafe.Pointer(&value))
	}
}
