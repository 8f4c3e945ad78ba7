package store_test

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/engine"
	"lintel/server/store"
)

// Of a file whose pages are not what bbolt takes them for, it is said in a sentence
// that it is torn, and nothing is written: neither a restore nor a start faults. The
// bytes are the number at the head of each page, its count of entries, and where its
// first entry lies (bbolt, internal/common/page.go).
func TestATornFileIsSaidToBeTorn(t *testing.T) {
	whole, err := os.ReadFile(filled(t, 2, 20))
	require.NoError(t, err)
	page := os.Getpagesize()
	for name, at := range map[string][2]int{"numbers": {0, 8}, "counts": {10, 12}, "places": {16, 32}} {
		t.Run(name, func(t *testing.T) {
			torn := append([]byte(nil), whole...)
			for from := 2 * page; from < len(torn); from += page {
				for i := from + at[0]; i < from+at[1]; i++ {
					torn[i] ^= 0xff
				}
			}
			backup, to := filepath.Join(t.TempDir(), "backup"), filepath.Join(t.TempDir(), "to", store.FileName)
			require.NoError(t, os.WriteFile(backup, torn, 0o600))
			var problem *engine.Problem
			_, _, err := store.Restore(backup, to, time.Now())
			require.ErrorAs(t, err, &problem)
			assert.NoFileExists(t, to)
			_, err = store.Open(backup, store.Options{})
			require.ErrorAs(t, err, &problem)
			assert.Contains(t, err.Error(), "the file was not touched")
			still, err := os.ReadFile(backup)
			require.NoError(t, err)
			assert.Equal(t, torn, still)
		})
	}
}
