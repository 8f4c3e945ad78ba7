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

func TestSlotsMustBeTheSame(t *testing.T) {
	assert.Equal(t, []string{"given", "truth"}, slots("it was {truth}, not {given}"))
	assert.Empty(t, slots("none"))
}
