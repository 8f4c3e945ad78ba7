// Package wire carries structs across the edge to JavaScript as plain trees: what
// engine/shape does by reflection, from generated tables. Reflection, and the
// descriptions of types that it needs, would cost the phone a fifth of all that Go
// adds to an empty program (measured with brotli 11, Go 1.26).
//
// layouts_gen.go says of every struct that crosses where each field lies; read and
// write walk it. That takes package unsafe, here and nowhere else: the offsets are
// the compiler's own (unsafe.Offsetof), memory is only ever made by a typed make,
// and a test holds both ways against engine/shape, with spoiled trees too: the same
// values, the same faults.
package wire
