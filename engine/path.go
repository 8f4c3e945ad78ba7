package engine

import "strconv"

// What carries trees across an edge (engine/shape, and pwa/wasm/wire on the
// phone) says where a fault lies, and what stood there, in the same words.

// WrongType is the problem of a tree that is of another kind than wanted.
func WrongType(path string, tree any, want string) error {
	return Bad(path, "is "+typeName(tree), "give "+want)
}

// Under is the path of a field of what stands at path.
func Under(path, name string) string {
	if path == "" {
		return name
	}
	return path + "." + name
}

// Nth is the path of an entry of the list at path, from 0.
func Nth(path string, i int) string { return path + "[" + strconv.Itoa(i) + "]" }

func typeName(tree any) string {
	switch tree.(type) {
	case nil:
		return "null"
	case map[string]any:
		return "an object"
	case []any:
		return "a list"
	case string:
		return "text"
	case bool:
		return "true or false"
	case float64:
		return "a number"
	}
	return "of an unknown type"
}
