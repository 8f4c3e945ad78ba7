package validate

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// One quick series through the command, in both forms, against the committed
// report's words for it.
func TestCommandRunsOneSeries(t *testing.T) {
	var out, errOut strings.Builder
	code := RunCommand([]string{"-series", "bryant_doorway_velocity", "-lines"}, &out, &errOut)
	assert.Contains(t, out.String(), "the neutral plane falls as the fire grows")
	assert.Equal(t, strings.Contains(out.String(), "FAILS"), code == 1, out.String())
	assert.Contains(t, errOut.String(), "s of fire in")

	file := filepath.Join(t.TempDir(), "report.md")
	RunCommand([]string{"-series", "bryant_doorway_velocity", "-o", file}, &out, &errOut)
	text, err := os.ReadFile(file)
	require.NoError(t, err)
	assert.Contains(t, string(text), "## bryant_doorway_velocity")
}

func TestCommandRefusesBadInput(t *testing.T) {
	for _, c := range []struct {
		args []string
		code int
		says string
	}{
		{[]string{"-no-such-flag"}, 2, "no-such-flag"},
		{[]string{"extra"}, 2, `takes no "extra"`},
		{[]string{"-series", "no_such"}, 1, "no series is called"},
		{[]string{"-data", t.TempDir()}, 1, "steckler_1982.csv"},
	} {
		var out, errOut strings.Builder
		assert.Equal(t, c.code, RunCommand(c.args, &out, &errOut), c.args)
		assert.Contains(t, errOut.String(), c.says)
		assert.Empty(t, out.String())
	}
}
