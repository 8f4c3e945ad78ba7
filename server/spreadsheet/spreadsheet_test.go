package spreadsheet_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"lintel/server/spreadsheet"
)

func TestACellIsNeverRun(t *testing.T) {
	for cell, want := range map[string]string{
		`=HYPERLINK("x")`: `'=HYPERLINK("x")`, "+1+1": "'+1+1", "-2+3": "'-2+3", "@SUM(A1)": "'@SUM(A1)",
		"\t=1": "'\t=1", "\r=1": "'\r=1", "\n=1": "'\n=1", "＝1+1": "'＝1+1", "－": "'－",
		// And what is none stays as it is.
		"": "", "Engine 7": "Engine 7", "-2.5": "-2.5", "+3": "+3", "A=B": "A=B", "é": "é",
	} {
		assert.Equal(t, want, spreadsheet.Plain(cell), "%q", cell)
	}
}
