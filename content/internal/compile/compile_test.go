package main

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// contentFolder is content, seen from this package.
const contentFolder = "../.."

// What is committed must be what the YAML says.
func TestGeneratedFilesAreFresh(t *testing.T) {
	all, err := compile(contentFolder)
	require.NoError(t, err)
	for path, want := range all.files {
		got, err := os.ReadFile(filepath.Join(contentFolder, filepath.FromSlash(path)))
		require.NoError(t, err, "run go generate ./content")
		assert.True(t, string(want) == string(got), "%s is stale: run go generate ./content", path)
	}
	left, err := all.left(contentFolder)
	require.NoError(t, err)
	assert.Empty(t, left, "nothing writes these any more: run go generate ./content")
}

// A file that an earlier run wrote and this one does not goes; what people wrote stays.
func TestWhatNothingWritesAnyMoreIsRemoved(t *testing.T) {
	folder := t.TempDir()
	for _, name := range []string{"old_gen.go", "kept.go"} {
		require.NoError(t, os.WriteFile(filepath.Join(folder, name), []byte("package content\n"), 0o644))
	}
	all := outputs{files: map[string][]byte{"new_gen.go": []byte("package content\n")}, pools: map[string]pool{".": {}}}
	require.NoError(t, all.save(folder))
	entries, err := os.ReadDir(folder)
	require.NoError(t, err)
	names := make([]string, len(entries))
	for i, entry := range entries {
		names[i] = entry.Name()
	}
	assert.Equal(t, []string{"kept.go", "new_gen.go"}, names)
}

func TestMistakesInContentAreNamed(t *testing.T) {
	cases := []struct{ name, file, text, want string }{
		{"unknown field", "linings/a.yaml", "- {id: brick, colour: red}", "is not a field known here"},
		{"missing field", "linings/a.yaml", "- {id: brick}", "is missing"},
		{"key given twice", "linings/a.yaml", "- {id: brick, id: stone}", "already defined"},
		{"not a number", "linings/a.yaml", "- {id: a, name: a, conductivity_w_m_k: .nan, density_kg_m3: 1, heat_capacity_j_kg_k: 1, thickness_m: 1, source: x}", "not a finite number"},
		{"unknown condition", "rules/a.yaml", "- {id: a, text: b, at: opening, when: [speed > 2], confidence: high, counter_sign: c, sources: [d]}", `"speed"`},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			folder := t.TempDir()
			require.NoError(t, os.CopyFS(filepath.Join(folder, "scales"), os.DirFS(filepath.Join(contentFolder, "scales"))))
			require.NoError(t, os.MkdirAll(filepath.Dir(filepath.Join(folder, c.file)), 0o755))
			require.NoError(t, os.WriteFile(filepath.Join(folder, c.file), []byte(c.text), 0o644))
			_, err := compile(folder)
			require.Error(t, err)
			assert.Contains(t, err.Error(), c.want)
		})
	}
}
