package report_test

import (
	"bytes"
	"encoding/csv"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/content/wording"
	"lintel/engine"
	"lintel/quiz"
	"lintel/quiz/session"
	"lintel/server/report"
)

func says(key string) string { return "said: " + key }

// class is a class of so many who read two scenes.
func class(t *testing.T, people int) *session.Report {
	t.Helper()
	volume, plane := 3, 0.4
	scene := func(id string) session.Scene {
		return session.Scene{ID: id, Planned: session.Planned{Family: "inlet-low", Seed: 7}, Item: quiz.Item{Title: "family/inlet-low/title", Question: quiz.Question{Asks: []quiz.Ask{
			{ID: "level:volume@door", Kind: quiz.AskLevel, Cue: engine.CueVolume, Text: "ask/level/volume"},
			{ID: "plane@door", Kind: quiz.AskPlane, Text: "ask/plane"},
			{ID: "stage", Kind: quiz.AskStage, Text: "ask/stage"},
		}}}, Truth: [][]quiz.Reply{{{Level: &volume}}, {{Plane: &plane}}, {{Stage: engine.Growth}, {Stage: engine.PreFlashover}}}}
	}
	var s session.State
	enter := func(e session.Entry) {
		e.V, e.Seq, e.AtMS = 1, s.Seq+1, 1_790_000_000_000+int64(s.Seq)*1000
		next, err := session.Apply(s, e)
		require.NoError(t, err)
		s = next
	}
	enter(session.Entry{Kind: session.Opened, Class: &session.Class{ID: "c", Title: "Tuesday, B shift", Pace: session.Led, Engine: "0.1.0", Content: "c1"}, Scenes: []session.Scene{scene("s1"), scene("s2"), scene("s3")}})
	for n := 1; n <= people; n++ {
		enter(session.Entry{Kind: session.Joined, Member: &session.Member{CallSign: "=Engine " + strconv.Itoa(n), Device: strconv.Itoa(n), Place: "a"}})
		for _, id := range []string{"s1", "s2"} {
			given, at := (n*7)%5, float64(n%11)/10
			steps := given - 3
			confidence := 0.7
			enter(session.Entry{Kind: session.Committed, Person: n, Scene: id, Answer: &session.Mark{TookS: 4, Confidence: &confidence, Parts: []session.PartMark{
				{Ask: "level:volume@door", Given: quiz.Reply{Level: &given}, Error: float64(max(steps, -steps)) / 4, Steps: &steps, Right: steps == 0},
				{Ask: "plane@door", Given: quiz.Reply{Plane: &at}, Error: 0.2},
				{Ask: "stage", Given: quiz.Reply{Unsure: n%3 == 0, Stage: map[bool]engine.Stage{false: engine.Decay}[n%3 == 0]}, Error: 1},
			}}})
		}
	}
	enter(session.Entry{Kind: session.Disagreed, Scene: "s2", Ask: "stage", On: true, Note: "seen from the side only"})
	enter(session.Entry{Kind: session.Ended})
	out := s.Report([]session.Choice{{Family: "roof", Title: "family/roof/title", Cues: []string{"volume"}}})
	return &out
}

var english = report.Reader{Language: "en", Says: says}

func TestTheTable(t *testing.T) {
	var out bytes.Buffer
	require.NoError(t, report.CSV(class(t, 4), english, &out))
	reader := csv.NewReader(&out)
	reader.FieldsPerRecord = -1
	rows, err := reader.ReadAll()
	require.NoError(t, err)
	require.Len(t, rows, 2+4*2*3)
	assert.Contains(t, rows[0][0], "TRAINING, NOT AN INCIDENT")
	assert.Equal(t, []string{"'=Engine 1", "1", "1", "said: family/inlet-low/title", "inlet-low", "7", "level:volume@door", "volume", "2", "3", "0.2500", "-1", "0", "0", "0", "0", "0.70", "4.0"}, rows[2])
	assert.Equal(t, "growth or pre flashover", rows[4][9])
	for _, row := range rows[2:] {
		assert.Len(t, row, len(rows[1]))
	}
}

// Papers of any size can be written, in each language; LINTEL_PAPER names a file to
// look at, and LINTEL_PAPER_LANGUAGE its language.
func TestThePaper(t *testing.T) {
	for n, people := range []int{0, 1, 12, 300} {
		language := report.Languages[n%len(report.Languages)]
		if people == 12 && os.Getenv("LINTEL_PAPER_LANGUAGE") != "" {
			language = os.Getenv("LINTEL_PAPER_LANGUAGE")
		}
		var out bytes.Buffer
		require.NoError(t, report.PDF(class(t, people), report.Reader{Language: language, Says: wording.In(language)}, &out))
		assert.True(t, bytes.HasPrefix(out.Bytes(), []byte("%PDF-")))
		assert.True(t, bytes.HasSuffix(bytes.TrimSpace(out.Bytes()), []byte("%%EOF")))
		if path := os.Getenv("LINTEL_PAPER"); path != "" && people == 12 {
			require.NoError(t, os.WriteFile(path, out.Bytes(), 0o600))
		}
	}
}

// Words of any script, and those that would end a string or an object of a PDF, go
// on paper as words: the file stays whole, and holds none of them as it is.
func TestAnyWordsGoOnPaper(t *testing.T) {
	words := []string{"消防 1", "Пожар", "🚒 7", ") Tj /URI (x", "endstream endobj", `\)`, "a\u0301", "\u00a0"}
	r := class(t, len(words))
	for i := range r.People {
		r.People[i].CallSign = words[i]
	}
	r.Title = ") /JS (app.alert(1))"
	var out bytes.Buffer
	require.NoError(t, report.PDF(r, english, &out))
	assert.True(t, bytes.HasSuffix(bytes.TrimSpace(out.Bytes()), []byte("%%EOF")))
	assert.False(t, bytes.Contains(out.Bytes(), []byte("/JS (app")))
	assert.False(t, bytes.Contains(out.Bytes(), []byte("/URI (x")))
	var usual bytes.Buffer
	require.NoError(t, report.PDF(class(t, len(words)), english, &usual))
	assert.Equal(t, bytes.Count(usual.Bytes(), []byte("endobj")), bytes.Count(out.Bytes(), []byte("endobj")), "as many objects as with plain words")
}
