package command

import (
	"encoding/json"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/engine"
)

// The field book's glossary is where the trade's words are sourced.
func TestWordsAreTheGlossarys(t *testing.T) {
	text, err := os.ReadFile("../../pwa/src/generated/glossary.json")
	require.NoError(t, err)
	var book struct {
		Terms []struct{ ID, Term string }
	}
	require.NoError(t, json.Unmarshal(text, &book))
	term := map[string]string{}
	for _, one := range book.Terms {
		term[one.ID] = strings.ToLower(one.Term)
	}
	var ids []string
	for _, stage := range engine.Stages {
		if stage != engine.Undetermined {
			ids = append(ids, string(stage))
		}
	}
	for _, hazard := range engine.Hazards {
		ids = append(ids, string(hazard))
	}
	for _, id := range append(ids, string(engine.FuelLimited), string(engine.VentilationLimited), string(engine.CueNeutralPlane)) {
		require.Contains(t, term, id)
		assert.Equal(t, term[id], plain(id))
	}
}

func TestPathsAreSpelled(t *testing.T) {
	assert.Equal(t, "in and out by door", spelledPath([]string{"door", "door"}))
	assert.Equal(t, "in and out by door, through room", spelledPath([]string{"door", "room", "door"}))
	assert.Equal(t, "in by door, through room, then stair, out by window", spelledPath([]string{"door", "room", "stair", "window"}))
	assert.Equal(t, "door", spelledPath([]string{"door"}))
}

func TestTheNearestIsNamedOnlyWhereTold(t *testing.T) {
	at := func(a, b float64) map[string]engine.OpeningFinding {
		return map[string]engine.OpeningFinding{"a": {Nearness: a}, "b": {Nearness: b}}
	}
	assert.Equal(t, "b (60 %)", nearest([]string{"a", "b"}, at(0.2, 0.6)))
	assert.Equal(t, "not told", nearest([]string{"a", "b"}, at(0.4, 0.41)))
	assert.Contains(t, nearest([]string{"a"}, at(0.5, 0)), "not told")
}
