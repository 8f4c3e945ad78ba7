// Package phone measures the engine as the phone runs it: it builds the
// WebAssembly as it is shipped, weighs it, and times its calls in Node, which
// runs them in the same V8 engine as Chromium does. It needs the work tree, Go
// and Node, so it serves the bench and the tests and no one else.
package phone

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"github.com/andybalholm/brotli"

	"lintel/engine/shape"
	"lintel/pwa/wasm/wasmbuild"
)

// Engine is a built engine.
type Engine struct {
	Path string // of the WebAssembly
	root string // of the work tree
}

// Build compiles the engine of the work tree at root into folder, with the
// flags that it is shipped with.
func Build(ctx context.Context, root, folder string) (Engine, error) {
	return compile(ctx, root, "./pwa/wasm", filepath.Join(folder, "lintel.wasm"))
}

func compile(ctx context.Context, root, pkg, path string) (Engine, error) {
	if err := wasmbuild.Compile(ctx, root, pkg, path); err != nil {
		return Engine{}, fmt.Errorf("phone: %w", err)
	}
	return Engine{Path: path, root: root}, nil
}

// bare is the least program that JavaScript can call: the control for size.
const bare = `package main

import "syscall/js"

func main() {
	js.Global().Set("lintel", js.ValueOf(map[string]any{}))
	select {}
}
`

// BuildBare compiles the control: what Go itself weighs, with nothing of ours.
func BuildBare(ctx context.Context, root, folder string) (Engine, error) {
	source := filepath.Join(folder, "bare.go")
	if err := os.WriteFile(source, []byte(bare), 0o600); err != nil {
		return Engine{}, fmt.Errorf("phone: write the control: %w", err)
	}
	return compile(ctx, root, source, filepath.Join(folder, "bare.wasm"))
}

// Size is what the engine weighs, in bytes: as it lies, and compressed with
// brotli at its highest quality, as it travels.
func (e Engine) Size() (raw, packed int, err error) {
	text, err := os.ReadFile(e.Path)
	if err != nil {
		return 0, 0, fmt.Errorf("phone: weigh the engine: %w", err)
	}
	var out bytes.Buffer
	w := brotli.NewWriterLevel(&out, brotli.BestCompression)
	if _, err := w.Write(text); err != nil {
		return 0, 0, fmt.Errorf("phone: compress the engine: %w", err)
	}
	if err := w.Close(); err != nil {
		return 0, 0, fmt.Errorf("phone: compress the engine: %w", err)
	}
	return len(text), out.Len(), nil
}

// Timing is how long the calls of one kind took, in milliseconds.
type Timing struct {
	Calls    int     `json:"calls"`
	MedianMS float64 `json:"median_ms"`
	P95MS    float64 `json:"p95_ms"`
	MostMS   float64 `json:"most_ms"`
}

// Times are the timings of the phone's calls.
type Times struct {
	StartMS   float64 `json:"start_ms"`   // compile and start the engine
	Read      Timing  `json:"read"`       // one reading, with a plan and three looks
	Item      Timing  `json:"item"`       // one drill item, over every family
	Frame     Timing  `json:"frame"`      // one frame of a fire on the bench, 1/30 s further on
	FireSpeed float64 `json:"fire_speed"` // simulated over real time, six compartments
}

// Times runs pwa/wasm/measure.mjs on the engine in Node.
func (e Engine) Times(ctx context.Context) (Times, error) {
	var times Times
	startUp, err := wasmExec(ctx)
	if err != nil {
		return times, err
	}
	readings, err := json.Marshal(shape.Encode(SampleReadings()))
	if err != nil {
		return times, fmt.Errorf("phone: write the readings: %w", err)
	}
	node := exec.CommandContext(ctx, "node", filepath.Join(e.root, "pwa", "wasm", "measure.mjs"), e.Path, startUp)
	node.Stdin = bytes.NewReader(readings)
	var complaint bytes.Buffer
	node.Stderr = &complaint
	output, err := node.Output()
	if err != nil {
		return times, fmt.Errorf("phone: time the engine: %w: %s", err, complaint.String())
	}
	if err := json.Unmarshal(output, &times); err != nil {
		return times, fmt.Errorf("phone: read the times: %w", err)
	}
	return times, nil
}

// Command gives the arguments with which a script of pwa/bench loads the engine.
func (e Engine) Command(ctx context.Context) ([]string, error) {
	startUp, err := wasmExec(ctx)
	return []string{e.Path, startUp}, err
}

// wasmExec is the path of Go's own start-up script.
func wasmExec(ctx context.Context) (string, error) {
	root, err := exec.CommandContext(ctx, "go", "env", "GOROOT").Output()
	if err != nil {
		return "", fmt.Errorf("phone: find Go: %w", err)
	}
	return filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", "wasm_exec.js"), nil
}
