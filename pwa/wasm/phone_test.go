//go:build !js

// Package wasm_test builds the engine for the phone as it is shipped, holds it
// to its size and calls it from Node.
package wasm_test

import (
	"bytes"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/andybalholm/brotli"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/content"
	"lintel/engine/shape"
	"lintel/pwa/wasm/wasmbuild"
	"lintel/quiz"
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

	t.Run("carries no reflection", func(t *testing.T) {
		list := exec.Command("go", "list", "-deps", ".")
		list.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
		packages, err := list.Output()
		require.NoError(t, err)
		for _, heavy := range []string{"reflect", "fmt", "encoding/json", "time", "os"} {
			assert.NotContains(t, strings.Fields(string(packages)), heavy)
		}
	})

	t.Run("answers every call", func(t *testing.T) {
		root, err := exec.Command("go", "env", "GOROOT").Output()
		require.NoError(t, err)
		node := exec.Command("node", "--test", "calls.test.mjs")
		node.Env = append(os.Environ(), "LINTEL_WASM="+engine, "LINTEL_ITEMS="+itemsHere(t),
			"LINTEL_EXEC="+filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", "wasm_exec.js"))
		output, err := node.CombinedOutput()
		require.NoError(t, err, string(output))
	})
}

// itemsHere writes one item of every family with a verdict, as this machine
// makes them, to a file: the phone must make the very same.
func itemsHere(t *testing.T) string {
	t.Helper()
	const seed = 7
	var list []any
	for _, f := range content.Families() {
		item, err := content.Item(f.ID, seed)
		require.NoError(t, err)
		answer := quiz.Answer{V: 1, Engine: item.Engine, Content: item.Content, Family: f.ID, Seed: seed, TookS: 9}
		for _, ask := range item.Question.Asks {
			answer.Replies = append(answer.Replies, quiz.Reply{Ask: ask.ID, Unsure: true})
		}
		verdict, err := content.Score(answer)
		require.NoError(t, err)
		list = append(list, shape.Encode(item), shape.Encode(verdict))
	}
	text, err := json.Marshal(list)
	require.NoError(t, err)
	path := filepath.Join(t.TempDir(), "items.json")
	require.NoError(t, os.WriteFile(path, text, 0o600))
	return path
}
