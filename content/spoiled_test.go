package content_test

import (
	"encoding/json"
	"maps"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"lintel/content"
	"lintel/engine"
	"lintel/engine/shape"
	"lintel/engine/sim"
)

// oddities are values that a hurried hand or a broken program might leave in a
// scenario file.
var oddities = []any{0.0, -1.0, 1e-9, 1e9, 0.5, 3.0, "", "room", "outside", "A", nil, true, []any{}, map[string]any{}, "gas_burner", "straw"}

// spoil changes one thing somewhere in a tree.
func spoil(draw *rand.Rand, tree any) any {
	switch v := tree.(type) {
	case map[string]any:
		if len(v) == 0 {
			return v
		}
		names := slices.Sorted(maps.Keys(v))
		name := names[draw.IntN(len(names))]
		if draw.IntN(12) == 0 {
			delete(v, name)
		} else {
			v[name] = spoil(draw, v[name])
		}
		return v
	case []any:
		if len(v) > 0 {
			i := draw.IntN(len(v))
			v[i] = spoil(draw, v[i])
			return v
		}
	case float64:
		if draw.IntN(2) == 0 {
			return v * []float64{0.01, 0.1, 0.5, 2, 10, 100, -1}[draw.IntN(7)]
		}
	}
	return oddities[draw.IntN(len(oddities))]
}

// A spoiled scenario is refused with a problem, or it runs and every number of
// it stays one: nothing in between.
func TestASpoiledSceneIsRefusedOrRuns(t *testing.T) {
	const seed = 20
	draw := rand.New(rand.NewPCG(seed, 0))
	families := content.Families()
	refused, ran := 0, 0
	for range 1500 {
		text, err := json.Marshal(shape.Encode(families[draw.IntN(len(families))].Scene))
		require.NoError(t, err)
		var tree any
		require.NoError(t, json.Unmarshal(text, &tree))
		for range 1 + draw.IntN(3) {
			tree = spoil(draw, tree)
		}
		if runs(t, tree) {
			ran++
		} else {
			refused++
		}
	}
	t.Logf("seed %d: %d refused, %d run", seed, refused, ran)
	require.Greater(t, refused, 300)
	require.Greater(t, ran, 100)
}

func runs(t *testing.T, tree any) bool {
	t.Helper()
	var scenario engine.Scenario
	var problem *engine.Problem
	if err := shape.Decode(tree, &scenario); err != nil {
		require.ErrorAs(t, err, &problem)
		return false
	}
	run, err := sim.New(scenario, content.Library())
	if err != nil {
		require.ErrorAs(t, err, &problem)
		return false
	}
	var frame engine.Frame
	require.NoError(t, run.Advance(20))
	run.Frame(&frame)
	require.False(t, math.IsNaN(frame.Header.HRRKW), "%v", tree)
	for _, room := range frame.Compartments {
		require.True(t, room.UpperC > -200 && room.UpperC < 3000, "%v", tree)
	}
	require.NoError(t, run.Readings().Validate(), "%v", tree)
	return true
}
