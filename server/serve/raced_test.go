//go:build race

package serve_test

// raced says that the race detector is on.
const raced = true
