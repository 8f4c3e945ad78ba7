package spreadsheet_test

import (
	"encoding/csv"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/server/spreadsheet"
)

func TestACellIsNeverRun(t *testing.T) {
	for cell, want := range map[string]string{
		`=HYPERLINK("x")`: `'=HYPERLINK("x")`, "+1+1": "'+1+1", "-2+3": "'-2+3", "@SUM(A1)": "'@SUM(A1)",
		"\t=1": "'\t'=1", "\r=1": "'\r'=1", "\n=1": "'\n'=1", "＝1+1": "'＝1+1", "－": "'－",
		// And what is none stays as it is.
		"x;=1+1": "x;'=1+1", `x;"=1+1&";`: `x;"'=1+1&";`, "x\n=1": "x\n'=1", "x,  @A1": "x,  '@A1", "x\t=1": "x\t'=1", "=1;=2": "'=1;'=2", "x;;=1": "x;;'=1",
		"": "", "a;b": "a;b", "a, b-c": "a, b-c", "Engine 7": "Engine 7", "-2.5": "-2.5", "+3": "+3", "A=B": "A=B", "é": "é",
	} {
		assert.Equal(t, want, spreadsheet.Plain(cell), "%q", cell)
	}
}

// A table that was written with commas and is read with semicolons, as a spreadsheet
// does where the comma is a decimal sign, holds no formula either. What is read is
// what such a spreadsheet makes of it: quotation marks count at the beginning of a
// cell only.
func TestNorOfATableReadWithSemicolons(t *testing.T) {
	for _, sign := range []string{"x;=cmd|'/C calc'!A0", `";=1+1;"`, `a";"=1+1&`, "a\n=1+1;", "=1;=2", `;"=1+1&";`} {
		var table strings.Builder
		rows := csv.NewWriter(&table)
		require.NoError(t, rows.Write([]string{spreadsheet.Plain("Engine 1"), spreadsheet.Plain(sign), "1"}))
		rows.Flush()
		for _, cell := range regexp.MustCompile(`[;\r\n]`).Split(table.String(), -1) {
			bare := strings.TrimLeft(cell, `" `)
			assert.False(t, bare != "" && strings.ContainsAny(bare[:1], "=+-@"), "%q holds %q", sign, cell)
		}
	}
}
