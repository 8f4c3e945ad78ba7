package quiz

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/engine"
)

func someOwn() Own {
	open := 1.0
	return Own{
		Title: "Behind the workshop", MomentS: 120, Kind: ReadOpening, Opening: "door",
		Scenario: engine.Scenario{
			V: 1, EndS: 300,
			Compartments: []engine.Compartment{{ID: "room", WidthM: 3, DepthM: 4, HeightM: 2.4, Lining: "gypsum"}},
			Openings:     []engine.Opening{{ID: "door", From: "room", To: engine.Outside, Side: engine.Alpha, Kind: engine.Door, WidthM: 0.8, HeightM: 2, Open: &open}},
		},
	}
}

func TestOwnScenesAreChecked(t *testing.T) {
	good := someOwn()
	require.NoError(t, good.Check("scenes[0].own"))
	wind := 3.0
	for _, c := range []struct {
		where  string
		change func(*Own)
	}{
		{"title", func(o *Own) { o.Title = "" }},
		{"title", func(o *Own) { o.Title = strings.Repeat("a", MaxTitle+1) }},
		{"kind", func(o *Own) { o.Kind = PredictMove }},
		{"moment_s", func(o *Own) { o.MomentS = MaxOwnS + 1 }},
		{"moment_s", func(o *Own) { o.MomentS = math.NaN() }},
		{"opening", func(o *Own) { o.Opening = "gate" }},
		{"opening", func(o *Own) { o.Opening = "" }},
		{"opening", func(o *Own) { o.Kind = CallStage }},
		{"scenario.openings[0].width_m", func(o *Own) { o.Scenario.Openings[0].WidthM = -1 }},
		{"scenario.moves", func(o *Own) {
			o.Scenario.Moves = make([]engine.Move, MaxOwnMoves+1)
			for i := range o.Scenario.Moves {
				o.Scenario.Moves[i].WindMS = &wind
			}
		}},
	} {
		own := someOwn()
		c.change(&own)
		var problem *engine.Problem
		require.ErrorAs(t, own.Check("scenes[0].own"), &problem, c.where)
		assert.Equal(t, "scenes[0].own."+c.where, problem.Where)
		assert.NotEmpty(t, problem.Do)
	}
}
