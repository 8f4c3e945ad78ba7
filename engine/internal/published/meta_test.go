package published_test

import (
	"encoding/json"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/engine/internal/published"
)

// Every file in testdata says where it comes from, and some test names it.
func TestEveryFileHasProvenanceAndAReader(t *testing.T) {
	root, err := published.Root()
	require.NoError(t, err)
	checks := checkSources(t, root)
	folder := os.DirFS(filepath.Join(root, "testdata"))
	seen := 0
	require.NoError(t, fs.WalkDir(folder, ".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		seen++
		t.Run(name, func(t *testing.T) {
			assertProvenance(t, folder, name)
			assert.True(t, named(checks, name), "no test reads testdata/%s: name its path in a test or delete it", name)
		})
		return nil
	}))
	assert.Positive(t, seen)
}

func assertProvenance(t *testing.T, folder fs.FS, name string) {
	text, err := fs.ReadFile(folder, name)
	require.NoError(t, err)
	switch path.Ext(name) {
	case ".csv":
		_, err := published.Parse(t, name, string(text))
		require.NoError(t, err)
	case ".json":
		assertJSONProvenance(t, name, text)
	default:
		assert.Fail(t, name+" is neither .csv nor .json")
	}
}

// assertJSONProvenance: a file of one origin says so once; a collection says of
// each case what was read and where it can be read again.
func assertJSONProvenance(t *testing.T, name string, text []byte) {
	var file struct {
		Provenance map[string]string `json:"provenance"`
		Cases      []struct {
			ID         string         `json:"id"`
			Provenance map[string]any `json:"provenance"`
		} `json:"cases"`
	}
	require.NoError(t, json.Unmarshal(text, &file), name)
	for _, c := range file.Cases {
		for _, key := range []string{"title", "address", "text_seen"} {
			assert.NotEmpty(t, c.Provenance[key], "%s: the provenance of case %s lacks %s", name, c.ID, key)
		}
	}
	if len(file.Cases) > 0 && file.Provenance == nil {
		return
	}
	for _, key := range []string{"source", "where", "seen"} {
		assert.NotEmpty(t, file.Provenance[key], "%s: provenance lacks %s", name, key)
	}
	for key := range file.Provenance {
		assert.Contains(t, published.Keys, key, "%s: provenance has an unknown line", name)
	}
}

// named reports whether some check holds the file's path, its bare name, or the
// pattern of its folder and kind ("cases/*.json"), as a string. This package
// does not count.
func named(checks, name string) bool {
	pattern := path.Join(path.Dir(name), "*"+path.Ext(name))
	for _, literal := range []string{name + `"`, pattern + `"`, `"` + path.Base(name) + `"`} {
		if strings.Contains(checks, literal) {
			return true
		}
	}
	return false
}

// checkSources joins all tests of the module but those of this package, and the
// bench, which checks against published values as well.
func checkSources(t *testing.T, root string) string {
	t.Helper()
	var all strings.Builder
	require.NoError(t, filepath.WalkDir(root, func(file string, entry fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case entry.IsDir() && (entry.Name() == "node_modules" || entry.Name() == ".git" || entry.Name() == "published"):
			return fs.SkipDir
		case strings.HasSuffix(file, "_test.go"), strings.HasSuffix(file, ".go") && strings.Contains(file, "bench"):
			text, err := os.ReadFile(file)
			if err != nil {
				return err
			}
			all.Write(text)
		}
		return nil
	}))
	return all.String()
}
