package score_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"lintel/engine"
	"lintel/quiz"
	"lintel/quiz/item"
	"lintel/quiz/score"
)

// words are a few of our own, enough to tell which line was taken.
func words() *score.Words {
	return &score.Words{
		Levels: []score.LevelWords{
			{Cue: engine.CueDarkness, Title: "Darkness", Level: 2, Name: "light", Looks: "Off white."},
			{Cue: engine.CueDarkness, Title: "Darkness", Level: 4, Name: "black", Looks: "Black or nearly so."},
		},
		Outcomes: []item.Outcome{
			{Ask: quiz.AskChange, Cue: engine.CueVelocity, Is: "more", Why: "Own line.", Tell: "The door."},
			{Ask: quiz.AskChange, Cue: engine.CueVelocity, Is: "more", Why: "General line.", Tell: "Anything."},
			{Ask: quiz.AskChange, Cue: engine.CueVolume, Is: "less", Why: "Less of it."},
			{Ask: quiz.AskFlow, Is: "in", Why: "All in."},
			{Ask: quiz.AskFlow, Is: "out", Why: "All out."},
		},
	}
}

func TestALevelIsExplainedByTheScalesWords(t *testing.T) {
	asks := []quiz.Ask{{Kind: quiz.AskLevel, Cue: engine.CueDarkness, Opening: "door"}}
	truth := []quiz.Reply{{Level: ptr(4)}}
	why, tell := score.Explain(asks, []quiz.Part{{Given: quiz.Reply{Level: ptr(2)}, Truth: truth}}, words())
	assert.Equal(t, "Darkness, black: Black or nearly so. You said light: Off white.", why)
	assert.Empty(t, tell)
	right, _ := score.Explain(asks, []quiz.Part{{Given: truth[0], Truth: truth, Right: true}}, words())
	assert.Equal(t, "Darkness, black: Black or nearly so.", right)
	unsure, _ := score.Explain(asks, []quiz.Part{{Given: quiz.Reply{Unsure: true}, Truth: truth}}, words())
	assert.Equal(t, right, unsure)
}

func TestAnOutcomeIsExplainedByTheFirstLineThatFits(t *testing.T) {
	asks := []quiz.Ask{
		{Kind: quiz.AskChange, Cue: engine.CueVelocity, Opening: "door"},
		{Kind: quiz.AskChange, Cue: engine.CueVolume, Opening: "door"},
	}
	why, tell := score.Explain(asks, []quiz.Part{
		{Truth: []quiz.Reply{{Change: quiz.More}}}, {Truth: []quiz.Reply{{Change: quiz.Less}}},
	}, words())
	assert.Equal(t, "Own line. Less of it.", why)
	assert.Equal(t, "The door.", tell)
}

func TestLinesOfSeveralOpeningsNameThem(t *testing.T) {
	asks := []quiz.Ask{{Kind: quiz.AskFlow, Opening: "front_door"}, {Kind: quiz.AskFlow, Opening: "window"}}
	why, _ := score.Explain(asks, []quiz.Part{
		{Truth: []quiz.Reply{{Flow: engine.FlowIn}}}, {Truth: []quiz.Reply{{Flow: engine.FlowOut}}},
	}, words())
	assert.Equal(t, "At the front door: All in. At the window: All out.", why)
}
