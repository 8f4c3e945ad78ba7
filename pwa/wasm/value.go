//go:build js && wasm

package main

import "syscall/js"

// deepest is how far values may nest. It is far beyond any of our shapes and
// stops at a value that holds itself.
const deepest = 24

// strange stands for a value that no file of ours can hold; shape refuses it
// with the path to it.
type strange struct{}

// fromJS turns a JavaScript value into a plain tree.
func fromJS(v js.Value) any { return fromDepth(v, 0) }

func fromDepth(v js.Value, depth int) any {
	switch v.Type() {
	case js.TypeUndefined, js.TypeNull:
		return nil
	case js.TypeBoolean:
		return v.Bool()
	case js.TypeNumber:
		return v.Float()
	case js.TypeString:
		return v.String()
	case js.TypeObject:
		if depth < deepest {
			return fromObject(v, depth+1)
		}
	}
	return strange{}
}

func fromObject(v js.Value, depth int) any {
	if array.Call("isArray", v).Bool() {
		list := make([]any, v.Length())
		for i := range list {
			list[i] = fromDepth(v.Index(i), depth)
		}
		return list
	}
	keys := object.Call("keys", v)
	tree := make(map[string]any, keys.Length())
	for i := range keys.Length() {
		name := keys.Index(i).String()
		tree[name] = fromDepth(v.Get(name), depth)
	}
	return tree
}

// toJS turns a plain tree into a JavaScript value.
func toJS(tree any) js.Value {
	switch v := tree.(type) {
	case map[string]any:
		made := object.New()
		for name, item := range v {
			made.Set(name, toJS(item))
		}
		return made
	case []any:
		made := array.New(len(v))
		for i, item := range v {
			made.SetIndex(i, toJS(item))
		}
		return made
	}
	return js.ValueOf(tree)
}

var (
	object = js.Global().Get("Object")
	array  = js.Global().Get("Array")
	bytes  = js.Global().Get("Uint8Array")
)

// fill copies numbers into a Float64Array of the same length.
func fill(out js.Value, numbers []float64) {
	view := bytes.New(out.Get("buffer"), out.Get("byteOffset"), out.Get("byteLength"))
	js.CopyBytesToJS(view, bytesOf(numbers))
}
