package pwa

import (
	"io/fs"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Built or not, the site has a front page.
func TestSiteHasAFrontPage(t *testing.T) {
	page, err := fs.ReadFile(Site(), "index.html")
	require.NoError(t, err)
	assert.Contains(t, string(page), "Lintel")
}

// The service worker's list must hold what the build made: a file missing from
// it is a screen missing offline. Compressed twins are the server's business.
func TestEverythingBuiltIsKeptOffline(t *testing.T) {
	worker, err := fs.ReadFile(Site(), "sw.js")
	if err != nil {
		t.Skip("nothing built here: run go generate ./... first")
	}
	err = fs.WalkDir(Site(), ".", func(path string, entry fs.DirEntry, err error) error {
		require.NoError(t, err)
		if entry.IsDir() || path == "sw.js" || strings.HasSuffix(path, ".br") {
			return nil
		}
		assert.Contains(t, string(worker), `"`+path+`"`, "not in the offline list")
		return nil
	})
	require.NoError(t, err)
}
