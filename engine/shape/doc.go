// Package shape carries Lintel's structs across an edge (a JSON file, a value
// from the phone's JavaScript, a YAML file of content) by way of a plain tree of
// map[string]any, []any, string, bool, float64 and nil.
//
// It is strict: an unknown field, a missing required one, a wrong type or a
// number that is not finite is refused with the path to it. A field is optional
// when it is a pointer or its tag says omitempty; null counts as absent.
//
// It exists because encoding/json costs the phone 220 kB of compressed
// WebAssembly, gives no path in its errors, and knows no required fields; the
// reflect package alone costs 19 kB (measured with brotli 11 on Go 1.26).
package shape
