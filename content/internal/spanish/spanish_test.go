package main

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Everything that a person reads in English has its Spanish, and no Spanish is
// left over from an English that has gone.
func TestNothingIsLeftInEnglish(t *testing.T) {
	missing, err := translate("../..", false)
	require.NoError(t, err)
	assert.Empty(t, missing, "write it in content/spanish, then run go generate ./content")
}

// A source is a sentence alone, or with the words of ours that stand beside it.
func TestASourceIsSaidInShortOrInFull(t *testing.T) {
	assert.Equal(t, source{Seen: "Resumen."}, sourceOf("Resumen."))
	assert.Equal(t, source{Seen: "Resumen.", Publisher: "el oficio"}, sourceOf(map[string]any{"seen": "Resumen.", "publisher": "el oficio"}))
	assert.Equal(t, source{}, sourceOf(nil))
}

func TestSlotsMustBeTheSame(t *testing.T) {
	assert.Equal(t, []string{"given", "truth"}, slots("it was {truth}, not {given}"))
	assert.Empty(t, slots("none"))
}
