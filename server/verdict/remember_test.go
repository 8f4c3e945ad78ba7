package verdict_test

import (
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/engine"
	"lintel/quiz"
	"lintel/server/verdict"
)

func TestASceneIsWorkedOutOnceForAClass(t *testing.T) {
	worked := map[string]int{}
	score := verdict.Remember(func(s quiz.Scene) (func(quiz.Answer) (quiz.Verdict, error), error) {
		worked[s.Family]++
		if s.Family == "bad" {
			return nil, errors.New("no such family")
		}
		return func(a quiz.Answer) (quiz.Verdict, error) { return quiz.Verdict{Score: float64(s.Seed) + a.TookS}, nil }, nil
	})
	for n := range 100 {
		got, err := score(quiz.Answer{Family: "f", Seed: 7, TookS: float64(n) / 1000})
		require.NoError(t, err)
		assert.InDelta(t, 7+float64(n)/1000, got.Score, 1e-12, "each answer is its own")
	}
	assert.Equal(t, 1, worked["f"])
	_, err := score(quiz.Answer{Family: "f", Seed: 7, Contrast: &quiz.Contrast{Stages: []engine.Stage{engine.Growth, engine.Decay}}})
	require.NoError(t, err)
	assert.Equal(t, 2, worked["f"], "another contrast is another scene")
	for range 2 {
		_, err := score(quiz.Answer{Family: "bad"})
		require.Error(t, err)
	}
	for n := range 200 {
		_, err := score(quiz.Answer{Family: "many", Seed: uint64(n)})
		require.NoError(t, err)
	}
	_, err = score(quiz.Answer{Family: "f", Seed: 7})
	require.NoError(t, err)
	assert.Equal(t, 3, worked["f"], "what nobody answers any more is forgotten")
}
