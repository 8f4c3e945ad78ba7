package desk_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/quiz"
	"lintel/server/desk"
)

const head = "call_sign,personnel\n"

// A table is taken as spreadsheets write it, whatever parts its values and ends its
// lines.
func TestATableAsSpreadsheetsWriteIt(t *testing.T) {
	for name, text := range map[string]string{
		"commas":            head + "Knot,7\nHeron,\n",
		"byte order mark":   "\ufeff" + head + "Knot,7\nHeron,\n",
		"semicolons":        "call_sign;personnel\nKnot;7\nHeron;\n",
		"tabs":              "call_sign\tpersonnel\nKnot\t7\nHeron\t\n",
		"other line ends":   "call_sign,personnel\rKnot,7\rHeron,\r",
		"network line ends": "call_sign,personnel\r\nKnot,7\r\nHeron,\r\n",
		"blank lines":       head + "\n\nKnot,7\n\nHeron\n",
		"quotes":            head + "\"Knot\",\"7\"\n\"Heron\",\n",
		"capitals":          "Call_Sign , Personnel\n Knot , 7\n Heron ,\n",
	} {
		seats, err := desk.ReadCSV(text)
		require.NoError(t, err, name)
		require.Len(t, seats, 2, name)
		assert.Equal(t, "Knot", seats[0].CallSign, name)
		assert.Equal(t, "7", *seats[0].Personnel, name)
		assert.Equal(t, "Heron", seats[1].CallSign, name)
		assert.Empty(t, *seats[1].Personnel, name)
	}
}

// What cannot be taken is told by the line that a person finds it on, and by a code.
func TestATableThatCannotBeTaken(t *testing.T) {
	many := func(n int) string {
		var lines strings.Builder
		for i := range n {
			fmt.Fprintf(&lines, "Engine %d,%d\n", i, i)
		}
		return lines.String()
	}
	for text, says := range map[string]string{
		"":                                         "table_head: line 1 is not the head",
		"name,number\nA,1\n":                       "table_head: line 1 is not the head",
		"c\x00a\x00l\x00":                          "table_head: line 1 is not the head",
		head:                                       "table_empty: line 2 is missing",
		head + many(10_000):                        fmt.Sprintf("table_full: line %d is one too many", quiz.MaxSeats+2),
		head + "Heron,1\n\"Kn\"ot,2\n":             "table_quotes: line 3 has a quotation mark",
		head + "Heron,1\n\"Knot,2\nRuff,3\n":       "table_quotes: line 3 has a quotation mark",
		head + "Knot,7,x\n":                        "table_values: line 2 has 3 values",
		head + "Se\ufffdor,1\n":                    "table_letters: line 2 has a letter",
		head + "\n\n" + strings.Repeat("x", 33):    "table_call_sign: line 4 has no call sign",
		head + ",7\n":                              "table_call_sign: line 2 has no call sign",
		head + "Knot,=1+1\n":                       "table_number: line 2 has a personnel number",
		head + "Knot,1\nHeron,2\n kNOT ,3\n":       "table_sign_again: line 4 has the call sign of line 2",
		head + "Knot,1\nHeron,\nRuff,\nWigeon,1\n": "table_number_again: line 5 has the number of line 2",
	} {
		seats, err := desk.ReadCSV(text)
		require.Error(t, err, says)
		assert.Nil(t, seats, "all or none")
		var named interface{ Code() string }
		require.ErrorAs(t, err, &named, says)
		assert.Contains(t, named.Code()+": "+err.Error(), says)
	}
}

// As many as fit are taken; the control of the one too many above.
func TestARosterAsLargeAsItMayBe(t *testing.T) {
	var lines strings.Builder
	for i := range quiz.MaxSeats {
		fmt.Fprintf(&lines, "Engine %d\n", i)
	}
	seats, err := desk.ReadCSV(head + lines.String())
	require.NoError(t, err)
	assert.Len(t, seats, quiz.MaxSeats)
}
