package bench

import (
	"os/exec"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What broke a script is in no line for certain: node ends with its own version, a
// browser with where it was called from.
func TestAScriptThatFailsIsQuotedWhole(t *testing.T) {
	var into struct{ MS float64 }
	failed := printedBy(exec.Command("node", "-e", `console.error("no chromium here"); throw new Error("cannot start")`), "paint.mjs", &into)
	require.ErrorContains(t, failed, "paint.mjs")
	assert.ErrorContains(t, failed, "no chromium here")
	assert.ErrorContains(t, failed, "Error: cannot start")

	garbled := printedBy(exec.Command("node", "-e", `console.log("12 ms")`), "paint.mjs", &into)
	assert.ErrorContains(t, garbled, "12 ms")

	require.NoError(t, printedBy(exec.Command("node", "-e", `console.log('{"MS":12}')`), "paint.mjs", &into))
	assert.Equal(t, 12.0, into.MS)
}
