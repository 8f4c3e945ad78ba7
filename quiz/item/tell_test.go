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

func TestHiddenOpeningsAreTold(t *testing.T) {
	shares := []float64{1, 0.2, 0, 0.5, 1}
	scene := engine.Scenario{Openings: []engine.Opening{
		{ID: "inner_door", To: "hall", Open: &shares[0]},
		{ID: "hatch", To: "void", Open: &shares[1]},
		{ID: "cupboard", To: "room", Open: &shares[2]},
		{ID: "stair", To: "landing", Open: &shares[4]},
		{ID: "front_door", To: engine.Outside, Open: &shares[3]},
	}}
	asked := Family{Kind: quiz.PredictMove}
	assert.Equal(t, "hidden/open/many|openings=@opening/inner_door,@opening/stair\nhidden/ajar/one|openings=@opening/hatch\nhidden/shut/one|openings=@opening/cupboard", asked.hidden(&scene))
	call := Family{Kind: quiz.CallStage, Vary: []Vary{{Knob: OpeningShare, ID: "hatch"}, {Knob: OpeningShare, ID: "front_door"}}}
	assert.Equal(t, "hidden/ajar/one|openings=@opening/hatch", call.hidden(&scene))
	assert.Empty(t, (&Family{Kind: quiz.ReadOpening}).hidden(&scene))
}

func TestHowSmokeWasIsSetAgainstHowItIs(t *testing.T) {
	thick := cue.Rating{Density: 3, Measures: cue.Measures{Velocity: 0.4, Volume: 2, Density: 3, Darkness: 0.5}}
	thin := cue.Rating{Density: 1, Measures: cue.Measures{Velocity: 0.2, Volume: 1, Density: 0.4, Darkness: 0.5}}
	none := cue.Rating{}
	assert.Equal(t, manner{"before/was", "how=@was/faster,@was/thicker,@was/more"}, was(&thick, &thin))
	assert.Equal(t, manner{"before/was", "how=@was/slower,@was/thinner,@was/less"}, was(&thin, &thick))
	assert.Equal(t, manner{id: "before/alike"}, was(&thin, &thin))
	assert.Equal(t, manner{id: "before/some_none"}, was(&thin, &none))
	assert.Equal(t, manner{id: "before/none_some"}, was(&none, &thin))
	var s said
	for _, place := range []string{"door", "window"} {
		s.add(nameOf(place), was(&thick, &thin))
	}
	s.add(nameOf("gap"), was(&none, &none))
	assert.Equal(t, "before/was|at=@opening/door,@opening/window|how=@was/faster,@was/thicker,@was/more|s=45\nbefore/none_none/also|at=@opening/gap", s.sentences(45))
}

// fading is a burner that burns up and down again, called while it fades.
func fading() *Family {
	f := doorPlane()
	f.Kind = quiz.CallStage
	f.Scene.Fuels[0].HRRKW = [][2]float64{{0, 0}, {30, 120}, {100, 120}, {220, 0}}
	f.Vary = nil
	f.Asks = []Ask{{Kind: quiz.AskStage}}
	f.Need = []Need{{Stage: []engine.Stage{engine.Decay}}}
	f.Moment = Window{FromS: 60, ToS: 220}
	f.BeforeS = 60
	return f
}

func TestAFallIsToldWithTheCall(t *testing.T) {
	made, truth, err := Make(fading(), 1, nil, library())
	require.NoError(t, err)
	assert.Equal(t, engine.Decay, truth.Stage)
	assert.Regexp(t, `^before/(was\|at=@opening/door\|how=@was/(faster|more|thicker)|some_none\|at=@opening/door)`, made.Question.Text)
}

// A call that only a fall tells is not asked where the fall cannot be told of.
func TestAFallThatCannotBeToldIsNotAsked(t *testing.T) {
	run, err := sim.New(fading().Scene, library())
	require.NoError(t, err)
	f := fading()
	w := walk{scene: &f.Scene, run: run}
	require.NoError(t, w.to(180))
	require.Equal(t, engine.Decay, run.Stage())
	_, told, err := f.before(&w)
	require.NoError(t, err)
	assert.False(t, told, "nothing was kept of what went before")
}

// A change that the fire would have shown of itself is not the move's.
func TestAChangeOfItselfIsNotAskedAsTheMovesWork(t *testing.T) {
	f := fading()
	f.Kind, f.Need = quiz.PredictMove, nil
	share := 0.97
	f.Move = &Prediction{Move: engine.Move{Opening: "door", Open: &share}, AfterS: 40}
	f.Asks = []Ask{{Kind: quiz.AskChange, Cue: engine.CueVolume, Opening: "door"}}
	run, err := sim.New(f.Scene, library())
	require.NoError(t, err)
	w := walk{scene: &f.Scene, run: run}
	require.NoError(t, w.to(105))
	j := judgement{family: f, walk: &w, margin: 1}
	accept, _, err := j.ask(f.Asks[0])
	require.NoError(t, err)
	require.Equal(t, quiz.Less, accept[0].Change, "the burner is dying down")
	own, err := j.moved(f.Asks[0], accept[0])
	require.NoError(t, err)
	assert.False(t, own)
}
