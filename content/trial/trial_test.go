package trial

import (
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/content"
	"lintel/engine"
)

const casesFile = "../../testdata/cases/cases.json"

func file(t *testing.T) File {
	t.Helper()
	text, err := os.ReadFile(casesFile)
	require.NoError(t, err)
	f, err := Parse(text)
	require.NoError(t, err)
	return f
}

// The honest number is the result: this test prints it and holds no floor for it.
// What it does hold is that the count is whole and the reader sound.
func TestReaderAgainstCodedCases(t *testing.T) {
	f := file(t)
	report := Judge(content.Rules(), f)
	t.Logf("%d cases\n%s", len(f.Cases), report)
	for _, g := range report.Groups() {
		for _, s := range []Score{g.Ours, g.Always, g.Density} {
			assert.Equal(t, g.Always.Hostile.All, s.Hostile.All)
			assert.LessOrEqual(t, s.Hostile.Flagged+s.Hostile.Abstained, s.Hostile.All)
			assert.LessOrEqual(t, s.Benign.Flagged+s.Benign.Abstained, s.Benign.All)
		}
		assert.Zero(t, g.Always.Gain(), "a reader that always flags knows nothing")
	}
	assert.Positive(t, report.Outside.Always.Hostile.All)
	assert.Less(t, report.Outside.Always.Hostile.All, report.All.Always.Hostile.All)
}

func TestEveryCaseSaysWhereItComesFrom(t *testing.T) {
	seen := map[string]bool{}
	for _, c := range file(t).Cases {
		assert.False(t, seen[c.ID], c.ID)
		seen[c.ID] = true
		assert.NotEmpty(t, c.Provenance.Report, c.ID)
		assert.NotEmpty(t, c.Provenance.Title, c.ID)
		assert.NotEmpty(t, c.Provenance.Address, c.ID)
		assert.NotEmpty(t, c.Provenance.TextSeen, c.ID)
		for _, o := range c.Readings.Looks[0].Openings {
			assert.Contains(t, []Vantage{Outside, AtOpening, Inside}, c.SeenFrom[o.ID], c.ID)
		}
	}
}

// Exact intervals: 5 of 10 is 0.187 to 0.813 in printed tables of binomial limits
// (from memory, to be confirmed); 0 of n has the closed form 1 - 0.025^(1/n).
func TestInterval(t *testing.T) {
	low, high := Interval(5, 10)
	assert.InDelta(t, 0.1871, low, 1e-4)
	assert.InDelta(t, 0.8129, high, 1e-4)
	low, high = Interval(0, 10)
	assert.Zero(t, low)
	assert.InDelta(t, 0.3085, high, 1e-4)
	low, high = Interval(17, 17)
	assert.InDelta(t, 0.8049, low, 1e-4)
	assert.InDelta(t, 1, high, 1e-12)
}

func TestInsideIsNotReadFromOutside(t *testing.T) {
	c := Case{
		SeenFrom: map[string]Vantage{"a": Inside, "b": AtOpening},
		Readings: engine.Readings{V: 1, Looks: []engine.Look{{Openings: []engine.Reading{{ID: "a", Density: new(4)}, {ID: "b"}}}}},
	}
	assert.True(t, hasCue(c.Readings))
	assert.False(t, hasCue(c.fromOutside()))
	assert.Len(t, c.Readings.Looks[0].Openings, 2, "the case itself is left whole")
}
