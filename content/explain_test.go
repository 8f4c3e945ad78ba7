package content_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/content"
	"lintel/content/wording"
	"lintel/engine"
	"lintel/engine/sim"
	"lintel/quiz"
	"lintel/quiz/score"
)

// answersTo lists every truth that an ask in words may have.
func answersTo(kind quiz.AskKind) []quiz.Reply {
	var list []quiz.Reply
	switch kind {
	case quiz.AskStage:
		for _, s := range engine.Stages {
			if s != engine.Undetermined {
				list = append(list, quiz.Reply{Stage: s})
			}
		}
	case quiz.AskRegime:
		list = []quiz.Reply{{Regime: engine.FuelLimited}, {Regime: engine.VentilationLimited}}
	case quiz.AskFlow:
		for _, f := range engine.Flows {
			list = append(list, quiz.Reply{Flow: f})
		}
	case quiz.AskChange:
		list = []quiz.Reply{{Change: quiz.Less}, {Change: quiz.Same}, {Change: quiz.More}}
	}
	return list
}

// Every outcome of every family has its line, no two outcomes the same one; and
// a prediction's first question has lines of the family's own, for what comes of
// a move hangs on the building.
func TestEveryOutcomeHasItsOwnLine(t *testing.T) {
	said := wording.Catalogue()
	for _, f := range content.Families() {
		for i, ask := range f.Asks {
			lines := map[string]bool{}
			truths := answersTo(ask.Kind)
			for _, truth := range truths {
				asks := []quiz.Ask{{ID: ask.ID(), Kind: ask.Kind, Cue: ask.Cue}}
				why, _ := score.Explain(f.Words(""), asks, []quiz.Part{{Truth: []quiz.Reply{truth}}})
				own, _, _ := strings.Cut(why, "?")
				line := wording.Say(why)
				assert.NotEqual(t, why, line, "%s %+v %+v", f.ID, ask, truth)
				lines[line] = true
				if i == 0 && f.Kind == quiz.PredictMove {
					assert.NotEmpty(t, said[own], "%s has no own line for %+v", f.ID, truth)
				}
			}
			assert.Len(t, lines, len(truths), "%s %+v", f.ID, ask)
		}
	}
}

// A rating is explained in the scale's own words, the true level's beside those
// of the level that was given.
func TestARatingIsExplainedByItsScale(t *testing.T) {
	made, truth, err := content.Make("upstairs-read", 3)
	require.NoError(t, err)
	verdict, err := content.Score(answerTo(made, func(i int, ask quiz.Ask) quiz.Reply {
		if ask.Cue != engine.CueDarkness {
			return truth.Accept[i][0]
		}
		wrong := (*truth.Accept[i][0].Level + 2) % (engine.TopLevel + 1)
		return quiz.Reply{Level: &wrong}
	}))
	require.NoError(t, err)
	wording.Verdict(&verdict)
	assert.Contains(t, verdict.Why, "Darkness, ")
	assert.Equal(t, 1, strings.Count(verdict.Why, "You said"))
	assert.NotContains(t, verdict.Why, "..")
}

// What hangs on a hatch out of sight is said, as it stands in this very scene.
func TestWhatStandsOpenOutOfSightIsTold(t *testing.T) {
	told := map[string]bool{}
	for seed := range uint64(12) {
		made, err := content.Item("box-roof-hatch", seed)
		require.NoError(t, err)
		wording.Item(&made)
		state := "the ceiling hatch is shut"
		for _, o := range made.Scenario.Openings {
			if o.ID == "ceiling_hatch" && *o.Open > 0 {
				state = "ceiling hatch are open" // together with the hole in the floor
			}
		}
		assert.Contains(t, made.Question.Text, state)
		told[state] = true
	}
	assert.Len(t, told, 2)
}

// A stage that only a change tells is asked with the change said, and the change
// is what the scene did.
func TestAFallIsToldWhereItIsAsked(t *testing.T) {
	fell := 0
	for _, f := range content.Families() {
		if f.Kind != quiz.CallStage {
			continue
		}
		for seed := range uint64(6) {
			made, truth, err := content.Make(f.ID, seed)
			require.NoError(t, err)
			if truth.Stage != engine.Decay && truth.Stage != engine.VentilationDecay && truth.Stage != engine.AfterKnockDown {
				continue
			}
			fell++
			wording.Item(&made)
			text := made.Question.Text
			require.Contains(t, text, " ago ", f.ID)
			assert.True(t, strings.Contains(text, "faster") || strings.Contains(text, "more") || strings.Contains(text, "smoke showed"), "%s %d: %s", f.ID, seed, text)
			back := math.Min(f.BeforeS, float64(int(made.MomentS/2/5))*5)
			assert.Contains(t, text, fmt.Sprintf("%g seconds ago", back), f.ID)
			run, err := sim.New(made.Scenario, content.Library())
			require.NoError(t, err)
			require.NoError(t, run.Advance(made.MomentS-back))
			then := smokeOut(run, made.Scenario.Openings)
			require.NoError(t, run.Advance(back))
			assert.Less(t, smokeOut(run, made.Scenario.Openings), then, "%s %d: %s", f.ID, seed, text)
		}
	}
	assert.Greater(t, fell, 5)
}

// smokeOut is visible smoke leaving the building, K·V summed over its openings.
func smokeOut(run *sim.Run, openings []engine.Opening) float64 {
	sum := 0.0
	for i := range openings {
		p := run.Physical(i)
		if openings[i].To == engine.Outside {
			sum += p.ExtinctionM * p.OutM3S
		}
	}
	return sum
}
