package lint

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"lintel/content"
)

// Every rule that ships has been measured, and its printed share is its count.
func TestEveryRuleHasBeenMeasured(t *testing.T) {
	known := map[string]bool{}
	for _, m := range measures {
		known[m.Rule] = true
		assert.LessOrEqual(t, m.Hits, m.Fires, m.Rule)
		if m.Fires > 0 {
			assert.InDelta(t, float64(m.Hits)/float64(m.Fires), m.Share, 0.0006, m.Rule)
		}
	}
	for _, r := range content.RuleList() {
		assert.True(t, known[r.ID], "%s is not measured: run content/internal/fit", r.ID)
	}
	assert.Len(t, measures, len(content.RuleList()), "a rule that was dropped is still measured")
}
