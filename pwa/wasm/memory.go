//go:build js && wasm

package main

import "unsafe"

// bytesOf views numbers as the bytes that a Float64Array holds: WebAssembly is
// little-endian, and so is a typed array on every machine that runs it.
func bytesOf(numbers []float64) []byte {
	return unsafe.Slice((*byte)(unsafe.Pointer(unsafe.SliceData(numbers))), 8*len(numbers))
}
