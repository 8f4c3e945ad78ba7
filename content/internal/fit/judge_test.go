package main

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"lintel/engine"
)

// Eight answers given 0.95: half of them right is off by 0.45 and wrong with
// confidence in half.
func TestScoresOfWhoIsTooSure(t *testing.T) {
	var s scores
	for i := range 8 {
		truth := engine.Growth
		if i%2 == 0 {
			truth = engine.Decay
		}
		s.add(engine.Finding{Stage: map[engine.Stage]float64{engine.Growth: 0.95, engine.Decay: 0.05}}, &moment{Stage: truth, Plan: &engine.Plan{}})
	}
	got := s.verdict()
	assert.InDelta(t, 0.5, got.Top, 1e-9)
	assert.InDelta(t, 0.45, got.Calibration, 1e-9)
	assert.InDelta(t, 0.5, got.ConfidentWrong, 1e-9)
}

// Of four openings one was not looked at and counts for nothing, one is told right
// with its plane, one wrong, and of one nothing was told.
func TestScoresOfOpenings(t *testing.T) {
	both := func(id string, plane float64) engine.Reading {
		return engine.Reading{ID: id, Flow: engine.FlowBoth, NeutralPlane: &plane}
	}
	m := moment{Plan: &engine.Plan{}, Now: engine.Look{Openings: []engine.Reading{both("a", 0.3), both("b", 0.52), both("c", 0.8), both("d", 0.5)}}}
	near, far := 0.38, 0.9
	f := engine.Finding{Openings: map[string]engine.OpeningFinding{
		"a": {Role: engine.RoleBoth, NeutralPlane: &near}, "b": {Role: engine.RoleOut, NeutralPlane: &far}, "c": {Role: engine.RoleUnknown},
	}}
	var s scores
	s.add(f, &m)
	got := s.verdict()
	assert.InDelta(t, 0.333, got.Roles, 1e-9)
	assert.InDelta(t, 0.333, got.Plane, 1e-9)
	assert.InDelta(t, 1, got.Controls["roles"], 1e-9)
	assert.InDelta(t, 0.333, got.Controls["plane"], 1e-9)
}
