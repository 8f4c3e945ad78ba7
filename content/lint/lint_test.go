package lint

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestContentIsClean(t *testing.T) {
	for _, problem := range Lint() {
		t.Error(problem.Error())
	}
	assert.GreaterOrEqual(t, len(shipped().rules), 45)
}
