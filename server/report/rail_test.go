package report

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A name on a rail takes as few lines as its place allows, and no line is wider.
func TestNamesOnARailAreBrokenWhereTheyMustBe(t *testing.T) {
	s := newSheet(speak(Reader{Language: "es"}))
	for text, lines := range map[string]int{"algo": 1, "la mayor parte": 1, "decaimiento limitado por ventilación": 3} {
		broken := s.broken("bold", text, 75)
		assert.Len(t, broken, lines, text)
		assert.Equal(t, text, strings.Join(broken, " "), "no word is lost")
		for _, line := range broken {
			assert.LessOrEqual(t, s.wide("bold", line), 75.0, line)
		}
	}
	long := s.broken("bold", "incomprehensibilities", 40)
	require.Len(t, long, 1)
	assert.True(t, strings.HasSuffix(long[0], "…"), long[0])
	assert.NoError(t, s.err)
}
