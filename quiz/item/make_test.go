package item

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/engine"
	"lintel/engine/cue"
	"lintel/engine/sim"
	"lintel/quiz"
)

// library has one lining and scales with round cut points: enough for a burner
// in a room, and nothing of content.
func library() sim.Library {
	scale := func(cuts ...float64) cue.Scale { return cue.Scale{Cuts: cuts} }
	return sim.Library{
		Materials: engine.Materials{Linings: []engine.Lining{{
			ID: "gypsum", ConductivityWMK: 0.17, DensityKgM3: 960, HeatCapacityJKgK: 1100, ThicknessM: 0.0125,
		}}},
		Scales: cue.Scales{
			Volume: scale(0.01, 0.1, 0.5, 1), Velocity: scale(0.02, 0.1, 0.2, 0.4),
			Density: scale(0.01, 0.5, 1.5, 3), Darkness: scale(0.1, 0.3, 0.5, 0.8),
			Still: 0.005, OneWay: 0.02, Reynolds: 1e4, Churning: 1, Pulsing: 2, Vanishes: 0.5, Tongues: 50, FlameFull: 500, Brown: 0.5,
		},
	}
}

// doorPlane asks for flow and plane at the door of a room with a steady burner.
func doorPlane() *Family {
	f := oneRoom()
	f.Kind = quiz.FlowPlane
	f.Scene.Moves = nil
	f.Vary = []Vary{{Knob: BurnerPower, ID: "burner", Low: 0.5, High: 1.5, Step: 0.1}}
	f.Moment = Window{FromS: 90, ToS: 150}
	f.Show = []string{"door"}
	f.Asks = []Ask{{Kind: quiz.AskFlow, Opening: "door"}, {Kind: quiz.AskPlane, Opening: "door"}}
	return f
}

func TestMakeAsksAboutTheSceneAtItsMoment(t *testing.T) {
	made, truth, err := Make(doorPlane(), 5, nil, library())
	require.NoError(t, err)
	assert.Equal(t, "one-room", made.Family)
	assert.Equal(t, uint64(5), made.Seed)
	assert.GreaterOrEqual(t, made.MomentS, 90.0)
	assert.LessOrEqual(t, made.MomentS, 150.0)
	assert.Greater(t, made.Scenario.EndS, made.MomentS)
	require.Len(t, made.Question.Asks, 2)
	assert.Equal(t, "flow@door", made.Question.Asks[0].ID)
	require.Len(t, truth.Accept, 2)
	// A room with one door breathes both ways, with the plane near the middle: in
	// the published series of such rooms it lies at 0.50 to 0.62 of the height of a
	// full door (K. D. Steckler and others, NBSIR 82-2520, 1982).
	assert.Equal(t, engine.FlowBoth, truth.Accept[0][0].Flow)
	assert.InDelta(t, 0.56, *truth.Accept[1][0].Plane, 0.1)
	assert.GreaterOrEqual(t, truth.CutMargin, fairMargin)
}

func TestSeedsDrawDifferentScenes(t *testing.T) {
	powers := map[float64]bool{}
	for seed := range uint64(12) {
		made, _, err := Make(doorPlane(), seed, nil, library())
		require.NoError(t, err)
		powers[made.Scenario.Fuels[0].HRRKW[1][1]] = true
	}
	assert.Greater(t, len(powers), 4)
}

func TestFamiliesDrawDifferentScenesFromOneSeed(t *testing.T) {
	other := doorPlane()
	other.ID = "another-room"
	differ := 0
	for seed := range uint64(8) {
		a, _, err := Make(doorPlane(), seed, nil, library())
		require.NoError(t, err)
		b, _, err := Make(other, seed, nil, library())
		require.NoError(t, err)
		if a.MomentS != b.MomentS {
			differ++
		}
	}
	assert.Greater(t, differ, 4)
}

func TestASceneThatNeverShowsItsLessonIsAProblem(t *testing.T) {
	f := doorPlane()
	f.Need = []Need{{Opening: "door", Flow: []engine.Flow{engine.FlowIn}}}
	_, _, err := Make(f, 1, nil, library())
	var problem *engine.Problem
	require.ErrorAs(t, err, &problem)
	assert.Contains(t, problem.What, "no fair scene for seed 1")
}

func TestSeedsBeyondAScriptsNumbersAreRefused(t *testing.T) {
	_, _, err := Make(doorPlane(), 1<<53, nil, library())
	var problem *engine.Problem
	require.ErrorAs(t, err, &problem)
	assert.Equal(t, "seed", problem.Where)
}

// A call is only asked while its stage holds: the moment at which the burner's
// fire turns from incipient to growth is never fair.
func TestACallIsAskedOnlyWhileItsStageHolds(t *testing.T) {
	f := doorPlane()
	f.Kind = quiz.CallStage
	f.Asks = []Ask{{Kind: quiz.AskStage}, {Kind: quiz.AskRegime}}
	f.Moment = Window{FromS: 1, ToS: 150}
	for seed := range uint64(6) {
		made, truth, err := Make(f, seed, nil, library())
		require.NoError(t, err)
		run, err := sim.New(made.Scenario, library())
		require.NoError(t, err)
		for _, t0 := range []float64{made.MomentS - fairSettled*settledS + 1, made.MomentS, made.MomentS + fairSettled*settledS - 1} {
			require.NoError(t, run.Advance(t0-run.TimeS()))
			assert.Equal(t, truth.Stage, run.Stage(), "seed %d at %v s of %v", seed, t0, made.MomentS)
		}
	}
}
