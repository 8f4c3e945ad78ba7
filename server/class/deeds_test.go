package class_test

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Whatever goes on the record of who did what has words on the pages, and nothing
// else has: a page that shows a deed without words shows a word of the code.
func TestEveryDeedHasItsWords(t *testing.T) {
	deeds := regexp.MustCompile(`(?:Did: |did := |did = known, |newAccount\(.*, |newPhrase\(.*, phrase, )"(\w+)"`)
	// Acts of a class that are told by their kind: see told in act.go.
	done := []string{"renamed", "removed", "disagreed", "ended", "sheet"}
	for _, pattern := range []string{"*.go", "../desk/*.go"} {
		files, err := filepath.Glob(pattern)
		require.NoError(t, err)
		for _, file := range files {
			if ok, _ := filepath.Match("*_test.go", filepath.Base(file)); ok {
				continue
			}
			text, err := os.ReadFile(file)
			require.NoError(t, err)
			for _, found := range deeds.FindAllStringSubmatch(string(text), -1) {
				done = append(done, found[1])
			}
		}
	}
	require.Greater(t, len(done), 20)
	for _, language := range []string{"en", "es"} {
		text, err := os.ReadFile("../../pwa/src/words/" + language + "/class-desk.ts")
		require.NoError(t, err)
		table := regexp.MustCompile(`(?s)\n  deeds: \{\n(.*?)\n  \}`).FindStringSubmatch(string(text))
		require.Len(t, table, 2)
		var said []string
		for _, row := range regexp.MustCompile(`(?m)^    (\w+): '.+',$`).FindAllStringSubmatch(table[1], -1) {
			said = append(said, row[1])
		}
		slices.Sort(done)
		assert.ElementsMatch(t, slices.Compact(slices.Clone(done)), said, language)
	}
}
