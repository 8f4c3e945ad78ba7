package item

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/engine"
	"lintel/engine/sim"
	"lintel/quiz"
)

// sketched is a room with a steady burner, a door and a window beside a room
// that burns nothing.
func sketched(kind quiz.ItemKind, opening string) *quiz.Own {
	scene := doorPlane().Scene
	scene.Compartments = append(scene.Compartments, engine.Compartment{ID: "hall", WidthM: 2, DepthM: 4, HeightM: 2.4, Lining: "gypsum"})
	scene.Openings = append(scene.Openings,
		engine.Opening{ID: "window", From: "hall", To: engine.Outside, Side: engine.Charlie, Kind: engine.Window, SillM: 0.9, WidthM: 1, HeightM: 1, Open: ptr(1.0)},
		engine.Opening{ID: "inner_door", From: "room", To: "hall", Kind: engine.Door, WidthM: 0.8, HeightM: 2, Open: ptr(1.0)})
	scene.Moves = []engine.Move{{TS: 60, Opening: "inner_door", Open: ptr(0.1)}, {TS: 200, Opening: "window", Open: ptr(0.0)}}
	return &quiz.Own{Title: "Behind the workshop", Scenario: scene, MomentS: 120, Kind: kind, Opening: opening}
}

// What is true of a sketched scene is what the same fire gives when it is run by
// hand.
func TestOwnAsksWhatItsFireShows(t *testing.T) {
	own := sketched(quiz.FlowPlane, "door")
	made, truth, err := Own(own, 9, library())
	require.NoError(t, err)
	assert.Equal(t, "Behind the workshop", made.Title)
	assert.Equal(t, quiz.OwnFamily, made.Family)
	assert.Equal(t, uint64(9), made.Seed)
	assert.Equal(t, 120.0, made.MomentS)
	assert.Equal(t, []string{"door"}, made.Show)
	require.Len(t, made.Scenario.Moves, 1, "what is done after the moment is left out")
	assert.Len(t, own.Scenario.Moves, 2, "what was sketched stays as it was")
	assert.Contains(t, made.Question.Text, "hidden/ajar/one", "the inner door as it stands now, not as it began")

	w := ranTo(t, own)
	rating, err := w.rate(w.run, "door")
	require.NoError(t, err)
	require.Len(t, truth.Accept, 2)
	assert.Equal(t, rating.Flow, truth.Accept[0][0].Flow)
	assert.Equal(t, planeOf(&rating), *truth.Accept[1][0].Plane)
}

func ranTo(t *testing.T, own *quiz.Own) *walk {
	t.Helper()
	run, err := sim.New(own.Scenario, library())
	require.NoError(t, err)
	w := &walk{scene: &own.Scenario, run: run}
	require.NoError(t, w.to(own.MomentS))
	return w
}

// Whatever lies too near another answer is left out, and only that.
func TestOwnLeavesOutWhatIsNotFair(t *testing.T) {
	kept, left := 0, 0
	for moment := 20.0; moment <= 120; moment += 10 {
		own := sketched(quiz.ReadOpening, "door")
		own.MomentS = moment
		made, truth, err := Own(own, 1, library())
		asked := map[string]bool{}
		if err == nil {
			require.Len(t, truth.Accept, len(made.Question.Asks))
			for _, ask := range made.Question.Asks {
				asked[ask.ID] = true
			}
		}
		w := ranTo(t, own)
		for _, ask := range ownFamily(own).Asks {
			rating, err := w.rate(w.run, "door")
			require.NoError(t, err)
			_, margin, err := rated(ask, quiz.Reply{}, &rating)
			require.NoError(t, err)
			assert.Equal(t, margin >= ask.least(), asked[ask.ID()], "%s after %v s", ask.ID(), moment)
			if asked[ask.ID()] {
				kept++
			} else {
				left++
			}
		}
	}
	assert.Positive(t, kept)
	assert.Positive(t, left)
}

func TestOwnThatShowsNothingIsRefused(t *testing.T) {
	own := sketched(quiz.NearestSeat, "")
	own.Scenario.Fuels = nil
	_, _, err := Own(own, 1, library())
	var problem *engine.Problem
	require.ErrorAs(t, err, &problem)
	assert.Equal(t, "own", problem.Where)
	assert.NotEmpty(t, problem.Do)
}
