package content_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/content"
	"lintel/engine"
	"lintel/quiz"
)

// answerTo is an answer with the replies that pick makes of each ask.
func answerTo(made quiz.Item, pick func(i int, ask quiz.Ask) quiz.Reply) quiz.Answer {
	answer := quiz.Answer{V: 1, Engine: made.Engine, Content: made.Content, Family: made.Family, Seed: made.Seed, Contrast: made.Contrast, TookS: 8}
	for i, ask := range made.Question.Asks {
		reply := pick(i, ask)
		reply.Ask, reply.EventS = ask.ID, nil
		answer.Replies = append(answer.Replies, reply)
	}
	return answer
}

func TestScoreOfTheTruthIsOneAndOfSilenceLess(t *testing.T) {
	for _, f := range content.Families() {
		made, truth, err := content.Make(f.ID, 21)
		require.NoError(t, err)
		perfect, err := content.Score(answerTo(made, func(i int, _ quiz.Ask) quiz.Reply { return truth.Accept[i][0] }))
		require.NoError(t, err, f.ID)
		assert.Equal(t, 1.0, perfect.Score, f.ID)
		assert.NotEmpty(t, perfect.Why, f.ID)
		assert.NotEmpty(t, perfect.Rule, f.ID)
		assert.NotEmpty(t, perfect.Source, f.ID)
		assert.NotEmpty(t, perfect.Tell, f.ID)
		assert.Equal(t, truth.Exact, perfect.Exact)
		unsure, err := content.Score(answerTo(made, func(int, quiz.Ask) quiz.Reply { return quiz.Reply{Unsure: true} }))
		require.NoError(t, err)
		assert.Less(t, unsure.Score, 0.9, f.ID)
		assert.Greater(t, unsure.Score, 0.0, f.ID)
	}
}

// Nothing that an answer says of its scene may be believed.
func TestScoreRefusesAnotherVersion(t *testing.T) {
	made, err := content.Item("two-way-door", 4)
	require.NoError(t, err)
	good := answerTo(made, func(int, quiz.Ask) quiz.Reply { return quiz.Reply{Unsure: true} })
	for where, spoil := range map[string]func(*quiz.Answer){
		"engine":  func(a *quiz.Answer) { a.Engine = "0.0.0" },
		"content": func(a *quiz.Answer) { a.Content = "other" },
		"family":  func(a *quiz.Answer) { a.Family = "nobody" },
		"seed":    func(a *quiz.Answer) { a.Seed = 1 << 60 },
	} {
		answer := good
		spoil(&answer)
		_, err := content.Score(answer)
		var problem *engine.Problem
		require.ErrorAs(t, err, &problem, where)
		assert.Equal(t, where, problem.Where)
	}
}
