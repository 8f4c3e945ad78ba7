package infer

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/engine"
)

// A reason says at which openings it holds and which cues it rests on: of one judged
// at openings only those where it holds, of one of the whole building none.
func TestAReasonSaysWhereAndOnWhatItRests(t *testing.T) {
	rules := []Rule{
		{ID: "fast and dark", At: AtOpening, When: []string{"velocity >= 3", "darkest opening", "just opened", "darkness >= 2"}, Confidence: High, Supports: []engine.Stage{engine.PreFlashover}},
		{ID: "anywhere fast", At: AtBuilding, When: []string{"looks >= 1", "most velocity >= 3"}, Confidence: High, Supports: []engine.Stage{engine.PreFlashover}},
	}
	set, err := NewSet(rules, nil, Priors{})
	require.NoError(t, err)
	readings := look(
		engine.Reading{ID: "window", Velocity: new(4), Darkness: new(3)},
		engine.Reading{ID: "door", Velocity: new(1), Darkness: new(1)},
	)
	readings.Looks[0].Changes = []engine.Change{{Opening: "window", State: engine.StateOpen}}
	finding := Read(set, readings)
	held := map[string]engine.Evidence{}
	for _, evidence := range append(finding.Because, finding.Against...) {
		held[evidence.Rule] = evidence
	}
	require.Contains(t, held, "fast and dark")
	assert.Equal(t, []string{"window"}, held["fast and dark"].At)
	assert.Equal(t, []engine.Cue{engine.CueVelocity, engine.CueDarkness}, held["fast and dark"].Cues)
	require.Contains(t, held, "anywhere fast")
	assert.Empty(t, held["anywhere fast"].At)
	assert.Equal(t, []engine.Cue{engine.CueVelocity}, held["anywhere fast"].Cues)
}

// A rule that counts what stands open names what it counted; another names nothing.
func TestAReasonThatCountsWhatStandsOpenNamesIt(t *testing.T) {
	rules := []Rule{
		{ID: "mostly shut", At: AtBuilding, When: []string{"more stands shut than open"}, Confidence: High, Supports: []engine.Stage{engine.Growth}},
		{ID: "little seen", At: AtBuilding, When: []string{"openings seen open or shut >= 2"}, Confidence: High, Supports: []engine.Stage{engine.Growth}},
		{ID: "anywhere fast", At: AtBuilding, When: []string{"most velocity >= 3"}, Confidence: High, Supports: []engine.Stage{engine.Growth}},
	}
	set, err := NewSet(rules, nil, Priors{})
	require.NoError(t, err)
	finding := Read(set, look(
		engine.Reading{ID: "window", State: engine.StateClosed, Velocity: new(4)},
		engine.Reading{ID: "door", State: engine.StatePart},
		engine.Reading{ID: "hatch", State: engine.StateClosed},
		engine.Reading{ID: "gap", Kind: engine.SeenCrack, State: engine.StateOpen},
		engine.Reading{ID: "unseen", State: engine.StateUnknown},
	))
	require.Len(t, finding.Because, 3)
	for _, reason := range finding.Because {
		if reason.Rule == "anywhere fast" {
			assert.Empty(t, reason.Open)
			assert.Empty(t, reason.Shut)
			continue
		}
		assert.Equal(t, []string{"door"}, reason.Open, reason.Rule)
		assert.Equal(t, []string{"hatch", "window"}, reason.Shut, reason.Rule)
	}
}
