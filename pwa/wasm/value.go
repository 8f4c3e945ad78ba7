//go:build js && wasm

package main

import (
	"syscall/js"

	"lintel/pwa/wasm/wire"
)

// deepest is how far values may nest. It is far beyond any of our shapes and
// stops at a value that holds itself.
const deepest = 24

// strange stands for a value that no file of ours can hold; shape refuses it
// with the path to it.
type strange struct{}

// fromJS turns a JavaScript value into a plain tree.
func fromJS(v js.Value) any {
	if v.Type() == js.TypeObject {
		if tree, ok := fromText(v); ok {
			return tree
		}
	}
	return fromDepth(v, 0)
}

// fromText goes by the value's JSON, in a few calls. It leaves to fromDepth, which
// goes by each value in it, what JSON cannot hold: a loop, a number that is none.
func fromText(v js.Value) (tree any, ok bool) {
	text, ok := stringify(v)
	if !ok {
		return nil, false
	}
	spelled, plain := wire.NumbersIn(text)
	if !plain {
		return nil, false
	}
	if spelled == "" {
		return wire.Tree(text, nil), true
	}
	list := floats.New(json.Call("parse", "["+spelled+"]"))
	numbers := make([]float64, list.Length())
	js.CopyBytesToGo(bytesOf(numbers), bytesIn(list))
	return wire.Tree(text, numbers), true
}

// stringify is JSON.stringify, which throws at what JSON cannot hold.
func stringify(v js.Value) (text string, ok bool) {
	defer func() {
		if thrown := recover(); thrown != nil {
			if _, fromJS := thrown.(js.Error); !fromJS {
				panic(thrown)
			}
			ok = false
		}
	}()
	made := json.Call("stringify", v)
	return made.String(), made.Type() == js.TypeString
}

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
	if tree == nil { // as every frame of a fire returns
		return js.Null()
	}
	text, numbers := wire.Spell(tree)
	list := floats.New(len(numbers))
	js.CopyBytesToJS(bytesIn(list), bytesOf(numbers))
	return json.Call("parse", wire.Fill(text, list.Call("join").String()))
}

var (
	object = js.Global().Get("Object")
	array  = js.Global().Get("Array")
	bytes  = js.Global().Get("Uint8Array")
	floats = js.Global().Get("Float64Array")
	json   = js.Global().Get("JSON")
)

// bytesIn is a Float64Array of our own, which has its buffer to itself, as bytes.
func bytesIn(list js.Value) js.Value { return bytes.New(list.Get("buffer")) }
