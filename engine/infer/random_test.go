package infer

import (
	"math"
	"math/rand/v2"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

	"lintel/engine"
)

// soundFinding checks what must hold of every finding, whatever was seen.
func soundFinding(t *testing.T, f engine.Finding) {
	t.Helper()
	sum := 0.0
	for stage, p := range f.Stage {
		require.False(t, math.IsNaN(p) || p < 0 || p > 1, "%s %v", stage, p)
		if stage != engine.Undetermined {
			require.Less(t, p, 1.0, "never certain")
		}
		sum += p
	}
	require.InDelta(t, 1, sum, 1e-9)
	require.InDelta(t, 1, f.Regime[engine.FuelLimited]+f.Regime[engine.VentilationLimited], 1e-9)
	require.NotEmpty(t, f.Set)
	near := 0.0
	for _, opening := range f.Openings {
		require.False(t, math.IsNaN(opening.Nearness))
		near += opening.Nearness
	}
	require.LessOrEqual(t, near, 1+1e-9)
	require.Len(t, f.Hazards, hazardCount)
	for _, hazard := range f.Hazards {
		require.Greater(t, hazard.Probability, 0.0, "never ruled out")
		require.Less(t, hazard.Probability, 1.0, "never certain")
		require.NotEmpty(t, hazard.Conditions)
	}
	for _, list := range [][]engine.Evidence{f.Because, f.Against} {
		require.NotNil(t, list)
	}
	require.NotNil(t, f.Path)
	require.NotNil(t, f.Cautions)
}

// randomReadings makes one to three looks at up to six openings, each cue seen
// about half the time, with or without a plan.
func randomReadings(rng *rand.Rand) engine.Readings {
	r := engine.Readings{V: 1}
	n := 1 + rng.IntN(6)
	for range 1 + rng.IntN(3) {
		var l engine.Look
		for i := range n {
			if rng.IntN(5) > 0 {
				l.Openings = append(l.Openings, randomReading(rng, "o"+strconv.Itoa(i)))
			}
		}
		if rng.IntN(2) == 0 {
			l.Wind = &engine.Wind{From: pick(rng, engine.Sides), MS: new(8 * rng.Float64())}
		}
		l.Water = maybe(rng, rng.IntN(2) == 0)
		if rng.IntN(3) == 0 {
			l.Changes = []engine.Change{{Opening: "o0", State: pick(rng, engine.OpeningStates)}}
		}
		r.Looks = append(r.Looks, l)
	}
	if rng.IntN(2) == 0 {
		r.Plan = randomPlan(rng, n)
	}
	return r
}

func randomReading(rng *rand.Rand, id string) engine.Reading {
	level := func() *int { return maybe(rng, rng.IntN(engine.TopLevel+1)) }
	return engine.Reading{
		ID: id, Side: pick(rng, engine.Sides), Floor: maybe(rng, rng.IntN(3)),
		Kind: pick(rng, engine.SeenKinds), State: pick(rng, engine.OpeningStates),
		WidthM: maybe(rng, 0.1+rng.Float64()), HeightM: maybe(rng, 0.1+2*rng.Float64()),
		Flow: pick(rng, engine.Flows), Volume: level(), Velocity: level(), Density: level(), Darkness: level(),
		Colour: pick(rng, engine.Colours), Churning: maybe(rng, rng.IntN(2) == 0), Pulsing: maybe(rng, rng.IntN(2) == 0),
		Vanishes: maybe(rng, rng.IntN(2) == 0), Flame: pick(rng, engine.FlamesSeen), Window: pick(rng, engine.GlassesSeen),
		NeutralPlane: maybe(rng, rng.Float64()),
	}
}

// randomPlan is a chain of rooms with an outside opening each.
func randomPlan(rng *rand.Rand, n int) *engine.Plan {
	p := &engine.Plan{}
	for i := range n {
		room := "r" + strconv.Itoa(i)
		p.Compartments = append(p.Compartments, engine.Compartment{ID: room, WidthM: 3, DepthM: 3, HeightM: 2.4, FloorM: float64(rng.IntN(2)) * 2.6})
		p.Openings = append(p.Openings, engine.Opening{ID: "o" + strconv.Itoa(i), From: room, To: engine.Outside, Kind: engine.Window, WidthM: 1, HeightM: 1, Open: new(rng.Float64())})
		if i > 0 {
			p.Openings = append(p.Openings, engine.Opening{ID: "d" + strconv.Itoa(i), From: room, To: "r" + strconv.Itoa(i-1), Kind: engine.Door, WidthM: 0.8, HeightM: 2, Open: new(float64(rng.IntN(2)))})
		}
	}
	return p
}

func maybe[T any](rng *rand.Rand, x T) *T {
	if rng.IntN(2) == 0 {
		return nil
	}
	return &x
}

// pick returns a word of the list or, half the time, none.
func pick[T ~string](rng *rand.Rand, list []T) T {
	if rng.IntN(2) == 0 {
		return ""
	}
	return list[rng.IntN(len(list))]
}
