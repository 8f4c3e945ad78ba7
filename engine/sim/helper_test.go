package sim_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"testing"

	"github.com/goccy/go-yaml"
	"github.com/stretchr/testify/require"

	"lintel/engine"
	"lintel/engine/cue"
	"lintel/engine/sim"
)

// library reads the content as written, so that these tests do not wait for the
// compiled one.
func library(t testing.TB) sim.Library {
	t.Helper()
	var l sim.Library
	read(t, "../../content/fuels/*.yaml", &l.Materials.Fuels)
	read(t, "../../content/linings/*.yaml", &l.Materials.Linings)
	l.Scales = scales
	return l
}

func read(t testing.TB, pattern string, into any) {
	t.Helper()
	files, err := filepath.Glob(pattern)
	require.NoError(t, err)
	require.Len(t, files, 1, pattern)
	text, err := os.ReadFile(files[0])
	require.NoError(t, err)
	var tree any
	require.NoError(t, yaml.Unmarshal(text, &tree))
	plain, err := json.Marshal(tree)
	require.NoError(t, err)
	require.NoError(t, json.Unmarshal(plain, into))
}

func ptr(x float64) *float64 { return &x }

// scales are cut points for these tests, which check the fire and not the scales.
var scales = cue.Scales{
	Volume:   cue.Scale{Base: 1, Cuts: []float64{0.04, 0.4, 4}},
	Velocity: cue.Scale{Cuts: []float64{0.03, 0.15, 0.3, 0.5}},
	Density:  cue.Scale{Cuts: []float64{0.05, 0.7, 3, 8}},
	Darkness: cue.Scale{Base: 1, Cuts: []float64{0.3, 0.53, 0.71}},
	Still:    0.01, OneWay: 0.1, Reynolds: 2500, Churning: 0.9, Pulsing: 4, Vanishes: 0.5,
	Tongues: 30, FlameFull: 1000, Brown: 0.3, Yellow: 0.3,
}

// room is one room with a burner and a door, the shape of most published tests.
func room(kW float64) engine.Scenario {
	return engine.Scenario{
		V: 1, Ambient: engine.Ambient{TempC: 20}, EndS: 120,
		Compartments: []engine.Compartment{{ID: "room", WidthM: 2.8, DepthM: 2.8, HeightM: 2.13, Lining: "ceramic_fibre"}},
		Openings:     []engine.Opening{{ID: "door", From: "room", To: engine.Outside, Side: engine.Alpha, Kind: engine.Door, WidthM: 0.74, HeightM: 1.83, Open: ptr(1)}},
		Fuels:        []engine.Fuel{{ID: "burner", In: "room", Kind: engine.GasBurner, HRRKW: [][2]float64{{0, kW}}}},
	}
}
