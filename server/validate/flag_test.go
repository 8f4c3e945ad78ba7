package validate

import (
	"os"
	"regexp"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/engine"
)

// flagFile holds the flag that the report sets.
const flagFile = "../../engine/validated_gen.go"

// heading is the line of a report that counts the lines of acceptance.
var heading = regexp.MustCompile(`(?m)^## Acceptance: (\d+) of (\d+) lines hold$`)

// passes reports whether every line of acceptance of a written report holds.
func passes(report string) bool {
	held, all := counted(report)
	return held == all && all != "0"
}

// counted is how many lines of acceptance of a written report hold, and of how many.
func counted(report string) (held, all string) {
	found := heading.FindStringSubmatch(report)
	if found == nil {
		return "0", "0"
	}
	return found[1], found[2]
}

// flagSource is the Go file with the flag of a written report.
func flagSource(report string) []byte {
	held, all := counted(report)
	return []byte(`// Code generated from the committed validation report by its test with -update. DO NOT EDIT.

package engine

// FireValidated says whether the fire model holds every line of acceptance of its
// validation report. It is the one flag behind every "model not yet validated"
// label.
const FireValidated = ` + strconv.FormatBool(passes(report)) + `

// FireLinesHeld of FireLines lines of acceptance hold in that report.
const (
	FireLinesHeld = ` + held + `
	FireLines     = ` + all + `
)
`)
}

// The label "not yet validated" is taken off by the committed report and nothing
// else.
func TestTheReportSetsTheFlag(t *testing.T) {
	report, err := os.ReadFile(ReportFile)
	require.NoError(t, err)
	require.Regexp(t, heading, string(report))
	assert.Equal(t, passes(string(report)), engine.FireValidated, "run with -update")
	source, err := os.ReadFile(flagFile)
	require.NoError(t, err)
	assert.Equal(t, string(flagSource(string(report))), string(source), "run with -update")
	assert.False(t, passes("## Acceptance: 25 of 26 lines hold\n"))
	assert.False(t, passes("no such line\n"))
	assert.True(t, passes("# x\n\n## Acceptance: 26 of 26 lines hold\n\n"))
}
