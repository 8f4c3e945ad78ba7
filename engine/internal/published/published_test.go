package published_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/engine/internal/published"
)

const good = `# source: someone, 1982
# where: table 2
# seen: from memory
# quantity: temperature
# unit: K
# tolerance: 2 % because two digits are printed
name,inputs,expected,tolerance
a,"1,5 and ""x""",300,
b,none,-10,0.5 K because it is coarse
`

func TestReadsCellsByName(t *testing.T) {
	table, err := published.Parse(t, "good.csv", good)
	require.NoError(t, err)
	require.Len(t, table.Rows, 2)
	assert.Equal(t, "table 2", table.Header["where"])
	assert.Equal(t, `1,5 and "x"`, table.Rows[0].Text("inputs"))
	assert.InDelta(t, -10, table.Rows[1].Float("expected"), 0)
	assert.InDelta(t, 6, table.Rows[0].Allowed(300), 1e-12, "2 % of 300")
	assert.InDelta(t, 0.5, table.Rows[1].Allowed(-10), 1e-12, "the row's own")
	assert.False(t, table.Rows[0].Has("tolerance"))
}

func TestRefusesFlaws(t *testing.T) {
	head := "# source: s\n# where: w\n# seen: d\n# quantity: q\n# unit: u\n"
	for name, text := range map[string]string{
		"unknown key":         head + "# tolerance: 1 %\n# author: me\nname\na\n",
		"missing key":         head + "name\na\n",
		"empty key":           head + "# tolerance:\nname\na\n",
		"key twice":           head + "# unit: K\n# tolerance: 1 %\nname\na\n",
		"comment in table":    head + "# tolerance: 1 %\nname\n# seen: d\na\n",
		"tolerance in words":  head + "# tolerance: about right\nname\na\n",
		"no rows":             head + "# tolerance: 1 %\nname\n",
		"too few cells":       head + "# tolerance: 1 %\nname,x\na\n",
		"row named twice":     head + "# tolerance: 1 %\nname\na\na\n",
		"quote never closed":  head + "# tolerance: 1 %\nname\n\"a\n",
		"header without key":  head + "# tolerance: 1 %\n# just a remark\nname\na\n",
		"negative tolerances": head + "# tolerance: -1 %\nname\na\n",
	} {
		_, err := published.Parse(t, "bad.csv", text)
		assert.Error(t, err, name)
	}
}

// fakeTest records a failure as a real test would stop on it.
type fakeTest struct{ failed bool }

func (f *fakeTest) Helper()      {}
func (f *fakeTest) Fatal(...any) { f.failed = true; panic(f) }

func TestAnUnknownColumnFailsTheTest(t *testing.T) {
	fake := &fakeTest{}
	table := published.Read(fake, "optics/extinction.csv")
	assert.PanicsWithValue(t, fake, func() { table.Rows[0].Float("no such column") })
	assert.PanicsWithValue(t, fake, func() { table.Rows[0].Float("name") })
	assert.PanicsWithValue(t, fake, func() { published.Read(fake, "optics/no_such_file.csv") })
	assert.True(t, fake.failed)
}
