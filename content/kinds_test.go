package content_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/content"
	"lintel/engine"
	"lintel/engine/sim"
	"lintel/quiz"
)

// at is an item's scene played anew up to a time.
func at(t *testing.T, scene engine.Scenario, seconds float64) *sim.Run {
	t.Helper()
	run, err := sim.New(scene, content.Library())
	require.NoError(t, err)
	require.NoError(t, run.Advance(seconds))
	return run
}

// ofKind is the first few items of every family of a kind.
func ofKind(t *testing.T, kind quiz.ItemKind, each func(one)) {
	t.Helper()
	for _, f := range content.Families() {
		if f.Kind == kind {
			for _, one := range itemsOf(t, f.ID)[:4] {
				each(one)
			}
		}
	}
}

// The nearest opening is one of the room that burns most, wherever one of the shown
// openings leads out of it.
func TestTheNearestOpeningIsOfTheBurningRoom(t *testing.T) {
	ofKind(t, quiz.NearestSeat, func(o one) {
		run := at(t, o.made.Scenario, o.made.MomentS)
		seat, most := "", -1.0
		for i, room := range run.Model().Rooms {
			if room.Out.BurnW > most {
				seat, most = o.made.Scenario.Compartments[i].ID, room.Out.BurnW
			}
		}
		var direct []string
		for _, opening := range o.made.Scenario.Openings {
			for _, shown := range o.made.Show {
				if opening.ID == shown && opening.From == seat {
					direct = append(direct, shown)
				}
			}
		}
		var accepted []string
		for _, reply := range o.truth.Accept[0] {
			accepted = append(accepted, reply.Opening)
		}
		if direct != nil {
			assert.ElementsMatch(t, direct, accepted, "%s %d", o.made.Family, o.made.Seed)
		}
	})
}

// Better, steady and worse go by the fire's heat at the two looks.
func TestTrendsGoByTheFire(t *testing.T) {
	ofKind(t, quiz.TwoLooks, func(o one) {
		require.Len(t, o.made.LookS, 2)
		assert.Equal(t, o.made.MomentS, o.made.LookS[1])
		then := at(t, o.made.Scenario, o.made.LookS[0]).Model().HRR
		run := at(t, o.made.Scenario, o.made.LookS[1])
		where := o.made.Family
		switch accept := o.truth.Accept[0]; {
		case len(accept) == 2:
			assert.Equal(t, engine.VentilationLimited, run.Regime(), where)
			assert.Less(t, run.Model().HRR, then, where)
		case accept[0].Trend == quiz.Worse:
			assert.Greater(t, run.Model().HRR, 1.2*then, where)
		case accept[0].Trend == quiz.Better:
			assert.Less(t, 1.2*run.Model().HRR, then, where)
		default:
			assert.InEpsilon(t, then, run.Model().HRR, 0.25, where)
		}
	})
}

// Of a pair, the picked scene is on the side that is asked for and the other on the
// other.
func TestPairsAreSetApart(t *testing.T) {
	ofKind(t, quiz.WhichOfTwo, func(o one) {
		require.NotNil(t, o.made.Contrast)
		require.NotNil(t, o.made.Second)
		first, second := at(t, o.made.Scenario, o.made.MomentS), at(t, o.made.Second.Scenario, o.made.Second.MomentS)
		seen := func(run *sim.Run) any {
			return shownOf(run, o.made.Contrast, o.made.Show[0])
		}
		assert.ElementsMatch(t, sidesOf(o.made.Contrast), []any{seen(first), seen(second)}, "%s %d", o.made.Family, o.made.Seed)
	})
}

// shownOf is what a scene has of what a contrast sets apart.
func shownOf(run *sim.Run, c *quiz.Contrast, opening string) any {
	switch {
	case c.Stages != nil:
		return run.Stage()
	case c.Regimes != nil:
		return run.Regime()
	}
	for _, r := range run.Readings().Looks[0].Openings {
		if r.ID == opening && c.Flows != nil {
			return r.Flow
		}
		if r.ID == opening {
			return *r.Level(c.Cue)
		}
	}
	return nil
}

func sidesOf(c *quiz.Contrast) (sides []any) {
	for _, s := range c.Stages {
		sides = append(sides, s)
	}
	for _, r := range c.Regimes {
		sides = append(sides, r)
	}
	for _, f := range c.Flows {
		sides = append(sides, f)
	}
	for _, l := range c.Levels {
		sides = append(sides, l)
	}
	return sides
}

// A contrast that is given is the one that is made, either way round; one that the
// family has not is a problem.
func TestAPairIsMadeOfWhatIsConfused(t *testing.T) {
	want := quiz.Contrast{Stages: []engine.Stage{engine.FullyDeveloped, engine.Growth}}
	made, _, err := content.MakeScene(quiz.Scene{Family: "pair-of-stages", Seed: 5, Contrast: &want})
	require.NoError(t, err)
	assert.Equal(t, &want, made.Contrast)
	_, _, err = content.MakeScene(quiz.Scene{Family: "pair-of-levels", Seed: 5, Contrast: &want})
	var problem *engine.Problem
	require.ErrorAs(t, err, &problem)
	assert.Equal(t, "contrast", problem.Where)
	_, _, err = content.MakeScene(quiz.Scene{Family: "one-door", Seed: 5, Contrast: &want})
	require.ErrorAs(t, err, &problem)
}

// What is to be reported does not hold when a watch begins; it holds at the moment
// that the truth names and not a few seconds before, or never within the watch.
func TestReportsHaveTheirMoment(t *testing.T) {
	recipes := map[string]int{}
	for i, f := range content.Families() {
		recipes[f.ID] = i
	}
	ofKind(t, quiz.CallOut, func(o one) {
		f := content.Families()[recipes[o.made.Family]]
		assert.Equal(t, o.made.Watch, o.made.Question.Asks[0].Watch, "its times are told since then")
		need := f.Watch.For[0]
		if need.Stage == nil {
			return // those by stage can be seen from out here
		}
		holds := func(seconds float64) bool {
			return engine.Known(at(t, o.made.Scenario, seconds).Stage(), need.Stage)
		}
		where, truth := o.made.Family, o.truth.Accept[0][0]
		require.NotNil(t, o.made.Watch)
		assert.Equal(t, f.Watch.LastS, o.made.Watch.ToS-o.made.Watch.FromS)
		assert.False(t, holds(o.made.Watch.FromS), where)
		if truth.Quiet {
			assert.False(t, holds(o.made.Watch.ToS), where)
			return
		}
		assert.True(t, holds(*truth.AtS+0.1), where)
		assert.False(t, holds(*truth.AtS-3), where)
		assert.Greater(t, *truth.AtS, o.made.Watch.FromS, where)
		assert.Less(t, *truth.AtS, o.made.Watch.ToS, where)
	})
}

// A shut room teaches what starving looks like only where one cannot say "growth"
// and be right nearly always.
func TestAShutRoomIsMetOnBothSidesOfItsFall(t *testing.T) {
	starved := 0
	for seed := range uint64(seeds) {
		_, truth, err := content.Make("shut-room", seed)
		require.NoError(t, err)
		if truth.Stage == engine.VentilationDecay {
			starved++
		}
	}
	assert.GreaterOrEqual(t, starved, seeds/4, "of %d", seeds)
	assert.LessOrEqual(t, starved, 3*seeds/4, "of %d", seeds)
}
