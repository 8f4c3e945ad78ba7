package main

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Whatever is wrong behind a command's name is said in one line that names the
// command, and nothing is made or printed.
func TestWrongWordsAreRefusedInOneLine(t *testing.T) {
	nowhere := filepath.Join(t.TempDir(), "none")
	cases := map[string]string{
		"bogus":                       `there is no command "bogus"`,
		"-bogus":                      "lintel serve: flag provided but not defined: -bogus",
		"serve one":                   `lintel serve: it takes no "one"`,
		"serve -data=":                "name a folder",
		"backup":                      "lintel backup: give the name of a new file",
		"backup one two":              "lintel backup: give the name of a new file",
		"restore -nonsense":           "lintel restore: flag provided",
		"restore nowhere.db":          "lintel restore: nowhere.db does not exist: name a file that the command backup wrote",
		"compact one":                 `lintel compact: it takes no "one"`,
		"export -jsonl=perhaps":       "lintel export: invalid boolean value",
		"check one":                   `lintel check: it takes no "one"`,
		"instructor":                  "lintel instructor: say list, or reset and a call sign",
		"instructor drop X":           "lintel instructor: say list, or reset and a call sign",
		"instructor list -bogus":      "lintel instructor: flag provided",
		"bench -only nothing":         `lintel bench: -only "nothing" names no figure: use one of vent_flow,`,
		"bench -minutes -3":           "lintel bench: give -minutes",
		"bench -minutes NaN":          "lintel bench: give -minutes",
		"bench -minutes 1 -only none": `lintel bench: -only "none" names no figure with a long run: use one of conservation,`,
		"validate one":                `lintel validate: it takes no "one"`,
		"sim":                         "lintel sim: give one scenario file",
		"help bogus":                  `there is no command "bogus"`,
	}
	t.Setenv("LINTEL_DATA", nowhere)
	for words, says := range cases {
		code, out, errOut := say(t, strings.Fields(words)...)
		assert.Equal(t, 2, code, words)
		assert.Empty(t, out, words)
		assert.Contains(t, errOut, says, words)
		assert.Equal(t, 1, strings.Count(errOut, "\n"), errOut)
	}
	assert.NoDirExists(t, nowhere)
}

// Help is no mistake, and flags may stand on either side of a word.
func TestHelpAndFlagsAnywhere(t *testing.T) {
	for _, c := range commands {
		for _, words := range [][]string{{c.name, "-h"}, {"help", c.name}} {
			code, out, errOut := say(t, words...)
			assert.Zero(t, code, words)
			assert.True(t, strings.HasPrefix(out, c.name+" "), out)
			assert.Empty(t, errOut, words)
		}
	}
	for _, words := range [][]string{{"help"}, {"-h"}, {"--help"}} {
		code, out, _ := say(t, words...)
		assert.Zero(t, code)
		assert.Contains(t, out, "put a backup in place")
	}
	for _, words := range [][]string{{"instructor", "list", "-data", t.TempDir()}, {"instructor", "-data", t.TempDir(), "list"}} {
		_, _, errOut := say(t, words...)
		assert.Contains(t, errOut, "lintel.db does not exist", words)
	}
}

// A file that is not ours is spoken of once, and by nothing that it is not.
func TestAForeignStoreIsRefusedInOneLine(t *testing.T) {
	data := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(data, "lintel.db"), []byte("somebody's notes"), 0o600))
	code, out, errOut := say(t, "serve", "-addr", "127.0.0.1:0", "-data", data)
	assert.Equal(t, 2, code)
	assert.Empty(t, out)
	assert.Contains(t, errOut, "is not a Lintel store")
	assert.Equal(t, 1, strings.Count(errOut, "\n"), errOut)
}

// say runs a command that ends by itself.
func say(t *testing.T, words ...string) (code int, out, errOut string) {
	t.Helper()
	ctx, stop := context.WithTimeout(context.Background(), 20*time.Second)
	defer stop()
	var o, e lines
	code = dispatch(ctx, words, streams{strings.NewReader(""), &o, &e})
	return code, o.String(), e.String()
}
