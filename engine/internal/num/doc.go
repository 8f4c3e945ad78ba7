// Package num holds the few numerical functions that the fire needs, written in
// plain Go so that a phone and a server compute the same bits.
//
// The standard library's Exp, and with it Pow, is assembly on some processors
// and differs from WebAssembly in the last bit. Here every product that feeds a
// sum is rounded on its own by an explicit float64 conversion, so no compiler
// may fuse the two into one instruction.
package num
