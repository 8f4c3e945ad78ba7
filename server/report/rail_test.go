package report

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/quiz"
	"lintel/quiz/session"
)

// A name on a rail takes as few lines as its place allows, and no line is wider.
func TestNamesOnARailAreBrokenWhereTheyMustBe(t *testing.T) {
	s := newSheet(speak(Reader{Language: "es"}))
	for text, lines := range map[string]int{"algo": 1, "la mayor parte": 1, "decaimiento limitado por ventilación": 3} {
		broken := s.broken("bold", text, 75)
		assert.Len(t, broken, lines, text)
		assert.Equal(t, text, strings.Join(broken, " "), "no word is lost")
		for _, line := range broken {
			assert.LessOrEqual(t, s.wide("bold", line), 75.0, line)
		}
	}
	long := s.broken("bold", "incomprehensibilities", 40)
	require.Len(t, long, 1)
	assert.True(t, strings.HasSuffix(long[0], "…"), long[0])
	assert.NoError(t, s.err)
}

// Every pile is as wide as the tallest needs, so that thirteen stand higher than nine.
func TestPilesAreComparedByTheirHeight(t *testing.T) {
	const step = 83.0
	of := func(counts ...int) []session.Count {
		all := make([]session.Count, len(counts))
		for i, n := range counts {
			all[i].N = n
		}
		return all
	}
	for _, c := range []struct {
		counts          []session.Count
		across, tallest int
	}{
		{of(0, 1), 1, 1},
		{of(3, 8), 1, 8},
		{of(13, 9), 2, 7},
		{of(30, 0), 4, 8},
		{of(300, 2), 14, stacked + 2},
	} {
		across, tallest := piled(c.counts, step)
		assert.Equal(t, [2]int{c.across, c.tallest}, [2]int{across, tallest}, "%v", c.counts)
	}
}

// What is too wide for its cell goes on below it, and nothing of it is cut off.
func TestARowOfATableCutsNothingOff(t *testing.T) {
	s := newSheet(speak(Reader{Language: "en"}))
	began := s.y
	places := []float64{0, 60}
	s.cells("regular", ink, places, "short", "also short")
	one := s.y - began
	s.cells("regular", ink, places, "Chorlitejo patinegro playero", "short")
	assert.InDelta(t, 3*one, s.y-began-one, 0.01, "three words over three lines")
	assert.NoError(t, s.err)
}

// Whoever reported stands on the rail at the time of the watch, who did not beside it.
func TestMomentsStandAlongWhatWasWatched(t *testing.T) {
	a := session.AskSpread{
		Ask:    quiz.Ask{Kind: quiz.AskMoment, Watch: &quiz.Span{FromS: 60, ToS: 160}},
		Counts: []session.Count{{Value: session.Quiet, N: 2}}, Moments: []float64{61, 88, 92, 200}, Unsure: 1,
		Truth: []quiz.Reply{{AtS: new(90.0), EventS: new(110.0)}},
	}
	counts := countsOf(&a)
	require.Len(t, counts, tenths+3)
	assert.Equal(t, session.Count{Value: "60", N: 1}, counts[0])
	assert.Equal(t, session.Count{Value: "90", N: 2}, counts[3])
	assert.Equal(t, session.Count{Value: "160", N: 1}, counts[10])
	assert.Equal(t, session.Count{Value: session.Quiet, N: 2}, counts[11])
	assert.Equal(t, session.Count{N: 1}, counts[12])
	assert.True(t, trueValue(&a, "90"))
	assert.False(t, trueValue(&a, "100"))
}
