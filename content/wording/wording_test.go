package wording_test

import (
	"encoding/json"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/content"
	"lintel/content/wording"
	"lintel/engine"
	"lintel/engine/infer"
	"lintel/quiz"
)

// said.json is read by the phone's own test too: both must say the same.
func TestSay(t *testing.T) {
	text, err := os.ReadFile("said.json")
	require.NoError(t, err)
	var cases []struct{ Keys, Said string }
	require.NoError(t, json.Unmarshal(text, &cases))
	require.NotEmpty(t, cases)
	for _, c := range cases {
		assert.Equal(t, c.Said, wording.Say(c.Keys))
		assert.Equal(t, c.Said, wording.Say(c.Said), "said twice")
	}
}

// Spanish has a sentence for every one of English, and another than English says.
func TestSpanishSaysEverySentence(t *testing.T) {
	spanish, other := wording.In("es"), 0
	for id, text := range wording.Catalogue() {
		said := spanish(id)
		assert.NotEqual(t, id, said)
		if said != text {
			other++
		}
	}
	assert.Greater(t, other, len(wording.Catalogue())*3/4)
	assert.Equal(t, wording.Say("stage/growth"), wording.In("tlh")("stage/growth"))
	assert.NotEqual(t, wording.Say("stage/growth"), spanish("stage/growth"))
}

// What stands before decimals is the language's own.
func TestNumbersAreWrittenAsTheLanguageDoes(t *testing.T) {
	const starved = "cause/starved_gas|t=@degrees/552|heat=@number/3.0|oxygen=@number/1.5"
	assert.Contains(t, wording.Say(starved), "1.5")
	assert.Contains(t, wording.In("es")(starved), "1,5")
	assert.NotContains(t, wording.In("es")(starved), "1.5")
}

// unsaid is what a text that was put into words never holds.
var unsaid = regexp.MustCompile(`[{}|@?]\w|\w/\w+/|^[a-z_]+/[a-z_/]+$`)

// Every text of every family is said, whatever the truth and the answer are.
func TestEveryTextOfPracticeIsSaid(t *testing.T) {
	for _, f := range content.Families() {
		for seed := range uint64(2) {
			made, truth, err := content.Make(f.ID, seed)
			require.NoError(t, err, f.ID)
			answer := quiz.Answer{V: 1, Engine: made.Engine, Content: made.Content, Contrast: made.Contrast, Family: f.ID, Seed: seed}
			for i, ask := range made.Question.Asks {
				reply := truth.Accept[i][0]
				if seed == 1 {
					reply = quiz.Reply{Ask: ask.ID, Unsure: true}
				}
				reply.EventS = nil // which only a truth has
				answer.Replies = append(answer.Replies, reply)
			}
			verdict, err := wording.Score(answer)
			require.NoError(t, err)
			wording.Item(&made)
			texts := append([]string{made.Title, verdict.Why, verdict.Rule, verdict.Source, verdict.Tell}, asked(made.Question)...)
			for _, part := range verdict.Parts {
				texts = append(texts, part.Remark)
			}
			for _, text := range texts {
				assert.NotEmpty(t, text, f.ID)
				assert.NotRegexp(t, unsaid, text, f.ID)
			}
		}
	}
}

func asked(q quiz.Question) []string {
	texts := strings.SplitAfter(q.Text, ". ")
	for _, ask := range q.Asks {
		texts = append(texts, ask.Text)
	}
	return texts
}

// Every text of a reading is said, and nothing else of it changes.
func TestEveryTextOfAReadingIsSaid(t *testing.T) {
	readings := engine.Readings{V: 1, Looks: []engine.Look{{Openings: []engine.Reading{
		{ID: "door", Kind: engine.SeenDoor, State: engine.StateOpen, Flow: engine.FlowOut, Volume: new(4), Velocity: new(4), Density: new(4), Darkness: new(4), Churning: new(true)},
		{ID: "pane", Kind: engine.SeenWindow, State: engine.StateClosed, Window: engine.GlassStained, Pulsing: new(true)},
	}}}}
	finding := infer.Read(content.Rules(), readings)
	wording.Finding(&finding)
	require.NotEmpty(t, finding.Because)
	texts := []string{finding.PathNote}
	for _, reason := range append(finding.Because, finding.Against...) {
		texts = append(texts, reason.Text, reason.Source)
	}
	for _, hazard := range finding.Hazards {
		texts = append(texts, hazard.Conditions...)
	}
	for _, text := range append(texts, finding.Cautions...) {
		assert.NotRegexp(t, unsaid, text)
	}
}
