package httpapi

import (
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Every sentence with a code stands in the catalogue of the pages under that code,
// word for word, and the catalogue holds no code that nobody says.
func TestEveryCodeHasItsSentenceOnThePages(t *testing.T) {
	text, err := os.ReadFile("../../pwa/src/words/en/refused.ts")
	require.NoError(t, err)
	said := map[string]string{}
	for _, row := range regexp.MustCompile(`(?m)^  (\w+): '(.*)',$`).FindAllStringSubmatch(string(text), -1) {
		said[row[1]] = strings.ReplaceAll(row[2], "’", "'")
	}
	meant := map[string]string{}
	for _, row := range statuses {
		meant[row.code] = row.err.Error() // a later row of the same code counts: see explain
	}
	assert.NotEmpty(t, meant)
	assert.Equal(t, meant, said)
}
