package class_test

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Whatever goes on the record of who did what has words on the pages, and nothing
// else has: a page that shows a deed without words shows a word of the code.
func TestEveryDeedHasItsWords(t *testing.T) {
	// Acts of a class that are told by their kind: see told in act.go.
	told := []string{"renamed", "removed", "disagreed", "ended", "sheet"}
	done := append(told, inTheCode(t, `(?:Did: |did := |did = known, |newAccount\(.*, |newPhrase\(.*, phrase, )"(\w+)"`)...)
	slices.Sort(done)
	done = slices.Compact(done)
	require.Greater(t, len(done), 20)
	for _, language := range []string{"en", "es"} {
		assert.ElementsMatch(t, done, onThePages(t, language, "deeds", `(?m)^    (\w+): '.+',$`), language)
	}
}

// What a deed was done to is a name or a title that somebody gave, or one of a few
// words of the server's own, and each of those has words on the pages.
func TestEveryDetailOfADeedHasItsWords(t *testing.T) {
	kept := inTheCode(t, `quiz\.Deed\{[^}]*What: "([^"]+)"`)
	require.Greater(t, len(kept), 3)
	for _, language := range []string{"en", "es"} {
		assert.ElementsMatch(t, kept, onThePages(t, language, "deedDetails", `(?m)^    '(.+)': '.+',$`), language)
	}
}

// inTheCode is what a pattern finds in the code that keeps deeds, tests left out.
func inTheCode(t *testing.T, pattern string) (found []string) {
	t.Helper()
	wanted := regexp.MustCompile(pattern)
	for _, folder := range []string{"*.go", "../desk/*.go"} {
		files, err := filepath.Glob(folder)
		require.NoError(t, err)
		for _, file := range files {
			if strings.HasSuffix(file, "_test.go") {
				continue
			}
			text, err := os.ReadFile(file)
			require.NoError(t, err)
			for _, match := range wanted.FindAllStringSubmatch(string(text), -1) {
				found = append(found, match[1])
			}
		}
	}
	return found
}

// onThePages is the keys of a table of the instructor's words in a language.
func onThePages(t *testing.T, language, table, row string) (keys []string) {
	t.Helper()
	text, err := os.ReadFile("../../pwa/src/words/" + language + "/class-desk.ts")
	require.NoError(t, err)
	held := regexp.MustCompile(`(?s)\n  ` + table + `: \{\n(.*?)\n  \}`).FindStringSubmatch(string(text))
	require.Len(t, held, 2)
	for _, match := range regexp.MustCompile(row).FindAllStringSubmatch(held[1], -1) {
		keys = append(keys, strings.ReplaceAll(match[1], `\'`, "'"))
	}
	return keys
}
