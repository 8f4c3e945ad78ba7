package sim_test

import (
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// fact is one thing that an instructor shows by one move: what is looked at, the
// numbers before and after, and when it holds. All are common practice (no
// source). Every number goes into the committed table testdata/facts.md, so that
// a change of the physics shows there as a diff.
type fact struct {
	*testing.T
	holds   string
	columns []string
	rows    [][]string
}

// table opens the numbers of a fact: when it holds, and what its columns are.
func (f *fact) table(holds string, columns ...string) {
	f.holds, f.columns = holds, columns
}

// row adds what was seen of one quantity.
func (f *fact) row(quantity string, values ...float64) {
	cells := []string{quantity}
	for _, x := range values {
		cells = append(cells, digits(x))
	}
	f.rows = append(f.rows, cells)
	f.Log(strings.Join(cells, " | "))
}

// digits spells three figures and no exponent.
func digits(x float64) string {
	short, err := strconv.ParseFloat(strconv.FormatFloat(x, 'g', 3, 64), 64)
	if err != nil {
		return "?"
	}
	if short > -0.005 && short < 0.005 {
		return "0"
	}
	return strconv.FormatFloat(short, 'f', -1, 64)
}

func (f *fact) markdown(title string) string {
	var s strings.Builder
	s.WriteString("\n### " + title + "\n\n" + f.holds + "\n\n| | " + strings.Join(f.columns, " | ") + " |\n|---" + strings.Repeat("|---", len(f.columns)) + "|\n")
	for _, cells := range f.rows {
		s.WriteString("| " + strings.Join(cells, " | ") + " |\n")
	}
	return s.String()
}

// shown is a fact with its title and what plays it.
type shown struct {
	title string
	play  func(*fact)
}

// TestFacts plays every fact on the box and on the house and holds the numbers
// against the committed table.
func TestFacts(t *testing.T) {
	const file = "testdata/facts.md"
	whole := true
	var page strings.Builder
	page.WriteString("# One move at a time: before and after\n\nMade by a test; do not edit (`go test ./engine/sim -run Fact -update`). " +
		"Each fact is common practice (no source).\nNumbers are our model's: they show direction, order and cause. A box's times and sizes are not those of a house.\n")
	for _, building := range []struct {
		name  string
		facts []shown
	}{{"On the small box", boxFacts}, {"On a two-storey house", houseFacts}} {
		page.WriteString("\n## " + building.name + "\n")
		for _, s := range building.facts {
			ran := t.Run(building.name+": "+s.title, func(t *testing.T) {
				f := &fact{T: t}
				s.play(f)
				page.WriteString(f.markdown(s.title))
			})
			whole = whole && ran
		}
	}
	if !whole || testing.Short() {
		return
	}
	if strings.Count(page.String(), "\n### ") < len(boxFacts)+len(houseFacts) {
		t.Log("not every fact was asked for: the table is not compared")
		return
	}
	if *update {
		require.NoError(t, os.WriteFile(file, []byte(page.String()), 0o644))
	}
	want, err := os.ReadFile(file)
	require.NoError(t, err)
	assert.Equal(t, string(want), page.String(), "the physics changed: run with -update, read the diff, and commit it")
}
