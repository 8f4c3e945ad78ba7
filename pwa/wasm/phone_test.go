//go:build !js

// Package wasm_test builds the engine for the phone as it is shipped, holds it
// to its size and calls it from Node.
package wasm_test

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/andybalholm/brotli"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/pwa/wasm/wasmbuild"
)

// mostBytes is the promised size over the wire: 750 KB compressed with brotli.
const mostBytes = 750_000

// build compiles the engine for the phone and returns its path.
func build(t *testing.T) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "lintel.wasm")
	require.NoError(t, wasmbuild.Compile(t.Context(), "../..", "./pwa/wasm", path))
	return path
}

func TestEngineOnThePhone(t *testing.T) {
	engine := build(t)

	t.Run("fits the budget", func(t *testing.T) {
		raw, err := os.ReadFile(engine)
		require.NoError(t, err)
		var packed bytes.Buffer
		w := brotli.NewWriterLevel(&packed, brotli.BestCompression)
		_, err = w.Write(raw)
		require.NoError(t, err)
		require.NoError(t, w.Close())
		t.Logf("%d bytes, %d with brotli", len(raw), packed.Len())
		assert.LessOrEqual(t, packed.Len(), mostBytes)
	})

	t.Run("answers every call", func(t *testing.T) {
		root, err := exec.Command("go", "env", "GOROOT").Output()
		require.NoError(t, err)
		node := exec.Command("node", "--test", "calls.test.mjs")
		node.Env = append(os.Environ(), "LINTEL_WASM="+engine,
			"LINTEL_EXEC="+filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", "wasm_exec.js"))
		output, err := node.CombinedOutput()
		require.NoError(t, err, string(output))
	})
}
