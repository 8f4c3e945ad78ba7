package infer

import (
	"testing"

	"github.com/stretchr/testify/require"

	"lintel/engine"
)

// smallSet is a handful of rules, enough to move every part of the reader.
func smallSet(t testing.TB, p Priors) *Set {
	t.Helper()
	if p.Cover == 0 {
		p.Cover = 0.95
	}
	rules := []Rule{
		{ID: "fast", At: AtOpening, When: []string{"velocity >= 3"}, Confidence: High, Supports: []engine.Stage{engine.PreFlashover}, Opposes: []engine.Stage{engine.Incipient}, Hazards: []engine.Hazard{engine.Flashover}, Condition: "fast", Sources: []string{"x"}},
		{ID: "pulse", At: AtOpening, When: []string{"pulsing"}, Confidence: High, Supports: []engine.Stage{engine.VentilationDecay}, Regime: engine.VentilationLimited, Hazards: []engine.Hazard{engine.Backdraft}, Condition: "pulsing", Sources: []string{"x"}},
		{ID: "wisps", At: AtOpening, When: []string{"volume <= 1", "smoke shows"}, Unless: []string{"water"}, Confidence: Middle, Supports: []engine.Stage{engine.Incipient}, Alike: []engine.Stage{engine.Incipient, engine.VentilationDecay}, Sources: []string{"x"}},
		{ID: "alike", At: AtBuilding, When: []string{"all openings alike"}, Confidence: Middle, Nearness: -1.5, Sources: []string{"x"}},
		{ID: "windy", At: AtBuilding, When: []string{"wind >= 2"}, Confidence: Low, Caution: "wind", Sources: []string{"x"}},
	}
	set, err := NewSet(rules, nil, p)
	require.NoError(t, err)
	return set
}

// look wraps openings into readings of one look.
func look(openings ...engine.Reading) engine.Readings {
	return engine.Readings{V: 1, Looks: []engine.Look{{Openings: openings}}}
}
