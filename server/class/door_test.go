package class_test

import (
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/server/class"
)

// The table in the API's description: what guessing codes comes to. 24^8 is
// 110,075,314,176 and 24^12 is 36,520,347,436,056,576.
func TestTheChanceOfGuessingIsAsDescribed(t *testing.T) {
	text, err := os.ReadFile("../httpapi/README.md")
	require.NoError(t, err)
	for _, c := range []struct {
		guesses, classes int
		chance           float64
		says             string
	}{
		{10_000, 1, 10_000.0 / 110_075_314_176, "| 10,000 | 1 | 9.1e-8 |"},
		{1_000_000, 1, 10_000.0/110_075_314_176 + 990_000.0/36_520_347_436_056_576, "| 1,000,000 | 1 | 9.1e-8 |"},
		{1_000_000, 20, 20 * (10_000.0/110_075_314_176 + 990_000.0/36_520_347_436_056_576), "| 1,000,000 | 20 | 1.8e-6 |"},
		{1_000_000_000, 20, 20 * (10_000.0/110_075_314_176 + 999_990_000.0/36_520_347_436_056_576), "| 1,000,000,000 | 20 | 2.4e-6 |"},
	} {
		assert.InEpsilon(t, c.chance, class.Chance(c.guesses, c.classes), 1e-12)
		assert.Contains(t, string(text), c.says)
	}
}
