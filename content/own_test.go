package content_test

import (
	"encoding/json"
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/content"
	"lintel/engine"
	"lintel/engine/shape"
	"lintel/quiz"
)

// bungalow is the house of that name as an instructor let it burn on the bench.
func bungalow(t *testing.T) engine.Scenario {
	t.Helper()
	text, err := os.ReadFile("buildings/bungalow.json")
	require.NoError(t, err)
	var tree any
	require.NoError(t, json.Unmarshal(text, &tree))
	var scene engine.Scenario
	require.NoError(t, shape.Decode(tree, &scene))
	return scene
}

func own(t *testing.T, kind quiz.ItemKind, opening string, moment float64) quiz.Scene {
	return quiz.Scene{Family: quiz.OwnFamily, Seed: 5, Own: &quiz.Own{Title: "The old bungalow", Scenario: bungalow(t), MomentS: moment, Kind: kind, Opening: opening}}
}

// A scene of one's own is asked, scored and explained like any other, in words.
func TestOwnScenesAreScoredByTheirOwnTruth(t *testing.T) {
	for _, scene := range []quiz.Scene{
		own(t, quiz.ReadOpening, "front_door", 230), own(t, quiz.FlowPlane, "front_door", 230), own(t, quiz.CallStage, "", 170), own(t, quiz.NearestSeat, "", 320),
	} {
		kind := scene.Own.Kind
		made, truth, err := content.MakeScene(scene)
		require.NoError(t, err, kind)
		assert.Equal(t, content.Version, made.Content)
		assert.Equal(t, "The old bungalow", made.Title)
		assert.NotEmpty(t, made.Question.Asks, kind)
		require.NoError(t, made.Scenario.Validate())

		perfect := answerTo(made, func(i int, _ quiz.Ask) quiz.Reply { return truth.Accept[i][0] })
		perfect.Own = scene.Own
		verdict, err := content.Score(perfect)
		require.NoError(t, err, kind)
		assert.Equal(t, 1.0, verdict.Score, kind)
		assert.Equal(t, truth.Exact, verdict.Exact)
		assert.Equal(t, "rule/own/text", verdict.Rule)

		unsure := answerTo(made, func(int, quiz.Ask) quiz.Reply { return quiz.Reply{Unsure: true} })
		unsure.Own = scene.Own
		verdict, err = content.Score(unsure)
		require.NoError(t, err, kind)
		assert.Less(t, verdict.Score, 0.9, kind)

		unsure.Own = nil
		_, err = content.Score(unsure)
		var problem *engine.Problem
		require.ErrorAs(t, err, &problem, "a sketched scene that is not given")
		assert.Equal(t, "own", problem.Where)
	}
}

// The nearest opening is asked for among those where smoke shows, the most first.
func TestOwnNearestIsAskedWhereSmokeShows(t *testing.T) {
	made, truth, err := content.MakeScene(own(t, quiz.NearestSeat, "", 320))
	require.NoError(t, err)
	assert.Greater(t, len(made.Show), 1)
	for _, reply := range truth.Accept[0] {
		assert.Contains(t, made.Show, reply.Opening)
	}
	assert.NotContains(t, made.Show, "rear_bedroom_window", "shut all along, nothing shows there")
}
