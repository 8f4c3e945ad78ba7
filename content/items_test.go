package content_test

import (
	"fmt"
	"math"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/content"
	"lintel/engine"
	"lintel/engine/shape"
	"lintel/engine/sim"
	"lintel/quiz"
	"lintel/quiz/item"
)

// seeds is how many items of each family the tests look at. Under -short a few do.
const seeds = 20

// one is an item with its truth, made once for all tests.
type one struct {
	made  quiz.Item
	truth item.Truth
}

// items makes the items of every family, by family and seed.
var items = sync.OnceValues(func() (map[string][]one, error) {
	all := map[string][]one{}
	for _, f := range content.Families() {
		for seed := range uint64(seeds) {
			if testing.Short() && seed > 3 {
				break
			}
			made, truth, err := content.Make(f.ID, seed)
			if err != nil {
				return nil, err
			}
			all[f.ID] = append(all[f.ID], one{made, truth})
		}
	}
	return all, nil
})

// itemsOf are those of one family.
func itemsOf(t *testing.T, family string) []one {
	t.Helper()
	all, err := items()
	require.NoError(t, err)
	return all[family]
}

// Every family names a rule that exists, asks about openings that it shows, and
// its scene is one that the engine accepts.
func TestFamiliesHoldTogether(t *testing.T) {
	rules := map[string]bool{}
	for _, r := range content.RuleList() {
		rules[r.ID] = true
	}
	for _, f := range content.Families() {
		assert.True(t, rules[f.Rule], "%s names the rule %q", f.ID, f.Rule)
		assert.NotEmpty(t, f.Asks, f.ID)
		assert.Equal(t, f.Kind == quiz.TwoLooks, f.GapS > 0, f.ID)
		assert.Equal(t, f.Kind == quiz.WhichOfTwo, len(f.Pairs) > 0, f.ID)
		assert.Equal(t, f.Kind == quiz.CallOut, f.Watch != nil, f.ID)
		assert.Equal(t, f.Kind == quiz.PredictMove, f.Move != nil, f.ID)
		require.NoError(t, f.Scene.Validate(), f.ID)
		outside := map[string]bool{}
		for _, o := range f.Scene.Openings {
			outside[o.ID] = o.To == engine.Outside
		}
		for _, id := range f.Show {
			assert.True(t, outside[id], "%s shows %q, which does not lead outside", f.ID, id)
		}
		for _, ask := range f.Asks {
			if ask.Opening != "" {
				assert.Contains(t, f.Show, ask.Opening, f.ID)
			}
		}
	}
}

// The truth must be what the very scene of the item does at its moment, found
// here by playing it anew; and it must stand clear of the cut points.
func TestTruthIsWhatTheSceneDoes(t *testing.T) {
	for _, f := range content.Families() {
		for _, one := range itemsOf(t, f.ID)[:4] {
			made, truth := one.made, one.truth
			require.Len(t, truth.Accept, len(made.Question.Asks))
			assert.Greater(t, truth.CutMargin, 0.03, "%s %d", f.ID, made.Seed)
			run, err := sim.New(made.Scenario, content.Library())
			require.NoError(t, err)
			require.NoError(t, run.Advance(made.MomentS))
			assert.Equal(t, run.Stage(), truth.Stage, "%s %d", f.ID, made.Seed)
			assert.Equal(t, run.Regime(), truth.Regime, "%s %d", f.ID, made.Seed)
			assert.NotEqual(t, engine.Undetermined, truth.Stage)
			require.NoError(t, truth.Exact.Validate())
			checkAccepted(t, made, truth, run)
		}
	}
}

// checkAccepted holds each accepted reply against readings of the run.
func checkAccepted(t *testing.T, made quiz.Item, truth item.Truth, run *sim.Run) {
	t.Helper()
	if made.Question.Move != nil {
		return // judged after the move, see TestPredictionsComeTrue
	}
	seen := map[string]engine.Reading{}
	for _, r := range run.Readings().Looks[0].Openings {
		seen[r.ID] = r
	}
	for i, ask := range made.Question.Asks {
		reply, reading := truth.Accept[i][0], seen[ask.Opening]
		assert.Equal(t, ask.ID, reply.Ask)
		switch ask.Kind {
		case quiz.AskLevel:
			assert.Equal(t, *reading.Level(ask.Cue), *reply.Level, "%s %d %s", made.Family, made.Seed, ask.ID)
		case quiz.AskFlow:
			assert.Equal(t, reading.Flow, reply.Flow)
		case quiz.AskPlane:
			want := map[engine.Flow]float64{engine.FlowOut: 0, engine.FlowIn: 1}[reading.Flow]
			if reading.NeutralPlane != nil {
				want = *reading.NeutralPlane
			}
			assert.Equal(t, want, *reply.Plane)
		}
	}
}

// A prediction is judged by making the move and waiting: a twin whose move is
// not made must not show it.
func TestPredictionsComeTrue(t *testing.T) {
	for _, f := range content.Families() {
		if f.Move == nil {
			continue
		}
		made, truth, err := content.Make(f.ID, 3)
		require.NoError(t, err, f.ID)
		run, err := sim.New(made.Scenario, content.Library())
		require.NoError(t, err)
		require.NoError(t, run.Advance(made.MomentS))
		before := planes(run)
		require.NoError(t, run.Apply(*made.Question.Move))
		require.NoError(t, run.Advance(f.Move.AfterS))
		after := planes(run)
		for i, ask := range made.Question.Asks {
			if ask.Cue != engine.CueNeutralPlane {
				continue
			}
			rise := after[ask.Opening] - before[ask.Opening]
			switch truth.Accept[i][0].Change {
			case quiz.More:
				assert.Greater(t, rise, 0.05, f.ID)
			case quiz.Less:
				assert.Less(t, rise, -0.05, f.ID)
			default:
				assert.Less(t, math.Abs(rise), 0.07, f.ID)
			}
		}
	}
}

func planes(run *sim.Run) map[string]float64 {
	list := map[string]float64{}
	for _, r := range run.Readings().Looks[0].Openings {
		switch {
		case r.NeutralPlane != nil:
			list[r.ID] = *r.NeutralPlane
		case r.Flow == engine.FlowIn:
			list[r.ID] = 1
		}
	}
	return list
}

func TestTheSameSeedGivesTheSameItem(t *testing.T) {
	for _, f := range content.Families() {
		first := itemsOf(t, f.ID)[2]
		again, truth, err := content.Make(f.ID, first.made.Seed)
		require.NoError(t, err)
		assert.Equal(t, first.made, again)
		assert.Equal(t, first.truth, truth)
		assert.Equal(t, content.Version, again.Content)
	}
}

// A family whose answer never varies teaches its own name and nothing else; and
// no two seeds show one scene.
func TestAnswersAndScenesOfAFamilyVary(t *testing.T) {
	for _, f := range content.Families() {
		answers, scenes := map[string]bool{}, map[string]bool{}
		list := itemsOf(t, f.ID)
		for _, one := range list {
			words := ""
			for _, accept := range one.truth.Accept {
				words += spell(accept[0]) + " "
			}
			answers[words] = true
			scenes[fmt.Sprint(one.made.MomentS, shape.Encode(one.made.Scenario))] = true
		}
		assert.Greater(t, len(answers), 1, "%s always answers %v", f.ID, answers)
		assert.Len(t, scenes, len(list), f.ID)
	}
}

// spell puts a reply into a word, a plane to the nearest tenth.
func spell(r quiz.Reply) string {
	switch {
	case r.Level != nil:
		return fmt.Sprint(*r.Level)
	case r.Plane != nil:
		return fmt.Sprintf("%.1f", *r.Plane)
	}
	return string(r.Stage) + string(r.Regime) + string(r.Change) + string(r.Flow) + r.Opening + string(r.Trend) + string(r.Pick) + fmt.Sprint(r.Quiet)
}
