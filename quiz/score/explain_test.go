package score_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"lintel/engine"
	"lintel/quiz"
	"lintel/quiz/score"
)

func TestALevelIsExplainedByTheScalesWords(t *testing.T) {
	asks := []quiz.Ask{{Kind: quiz.AskLevel, Cue: engine.CueDarkness, Opening: "door"}}
	truth := []quiz.Reply{{Level: ptr(4)}}
	why, tell := score.Explain("family/f/", asks, []quiz.Part{{Given: quiz.Reply{Level: ptr(2)}, Truth: truth}})
	assert.Equal(t, "why/level/given|cue=@scale/darkness|name=@scale/darkness/4|looks=@scale/darkness/4/looks|given=@scale/darkness/2|given_looks=@scale/darkness/2/looks", why)
	assert.Equal(t, "family/f/tell", tell)
	right, _ := score.Explain("family/f/", asks, []quiz.Part{{Given: truth[0], Truth: truth, Right: true}})
	assert.Equal(t, "why/level|cue=@scale/darkness|name=@scale/darkness/4|looks=@scale/darkness/4/looks", right)
	unsure, _ := score.Explain("family/f/", asks, []quiz.Part{{Given: quiz.Reply{Unsure: true}, Truth: truth}})
	assert.Equal(t, right, unsure)
}

// The family's own line is taken before the general one.
func TestAnOutcomeIsExplainedByWhatCameTrue(t *testing.T) {
	asks := []quiz.Ask{
		{Kind: quiz.AskChange, Cue: engine.CueVelocity, Opening: "door"},
		{Kind: quiz.AskChange, Cue: engine.CueVolume, Opening: "door"},
	}
	why, tell := score.Explain("family/f/", asks, []quiz.Part{
		{Truth: []quiz.Reply{{Change: quiz.More}}}, {Truth: []quiz.Reply{{Change: quiz.Less}}},
	})
	assert.Equal(t, "family/f/why/change/velocity/more?why/change/velocity/more\nfamily/f/why/change/volume/less?why/change/volume/less", why)
	assert.Equal(t, "family/f/tell/change/velocity/more?tell/change/velocity/more?family/f/tell/change/volume/less?tell/change/volume/less?family/f/tell", tell)
}

func TestLinesOfSeveralOpeningsNameThem(t *testing.T) {
	asks := []quiz.Ask{{Kind: quiz.AskFlow, Opening: "front_door"}, {Kind: quiz.AskFlow, Opening: "window"}}
	why, _ := score.Explain("family/f/", asks, []quiz.Part{
		{Truth: []quiz.Reply{{Flow: engine.FlowIn}}}, {Truth: []quiz.Reply{{Flow: engine.FlowOut}}},
	})
	assert.Equal(t, "why/at|why=@family/f/why/flow/in?why/flow/in|opening=@opening/front_door\nwhy/at|why=@family/f/why/flow/out?why/flow/out|opening=@opening/window", why)
}
