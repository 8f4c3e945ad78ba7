package zone_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"lintel/engine"
	"lintel/engine/zone"
)

// storeys is a room full of hot gas under another, beside it by so many metres.
func storeys(beside float64) engine.Scenario {
	hot := &engine.Initial{UpperC: ptr(300), LowerC: ptr(300), InterfaceM: ptr(1)}
	return engine.Scenario{
		V: 1, EndS: 3600, Ambient: engine.Ambient{TempC: 20},
		Compartments: []engine.Compartment{
			{ID: "below", WidthM: 3, DepthM: 3, HeightM: 2.4, Lining: "gypsum", Initial: hot, XM: ptr(0), YM: ptr(0)},
			{ID: "above", WidthM: 3, DepthM: 3, HeightM: 2.4, FloorM: 2.4, Lining: "gypsum", XM: ptr(beside), YM: ptr(0)},
		},
		Openings: []engine.Opening{},
	}
}

// A hot room warms the floor above it through its ceiling, half of it where half
// lies over it, and not at all one that stands beside.
func TestHeatGoesThroughTheFloor(t *testing.T) {
	ground := func(beside float64) float64 {
		m := build(t, storeys(beside))
		for range 24000 {
			m.Step(zone.StepS)
		}
		return m.Rooms[1].Faces[zone.Ground].Temp[7] - m.Ambient
	}
	over, half, next := ground(0), ground(1.5), ground(3)
	t.Logf("back of the upper floor %.1f, %.1f and %.1f K over the air", over, half, next)
	assert.Greater(t, over, 5.0)
	assert.Less(t, half, over)
	assert.Greater(t, half, 0.2*over)
	assert.InDelta(t, 0, next, 0.01)
}

// Two slabs back to back pass what one gives off to the other: left to themselves
// they hold the heat that they had.
func TestAFloorKeepsItsHeat(t *testing.T) {
	m := build(t, storeys(0))
	ceiling, ground := &m.Rooms[0].Faces[zone.Ceiling], &m.Rooms[1].Faces[zone.Ground]
	for i := range ceiling.Temp {
		ceiling.Temp[i], ground.Temp[i] = 500, 300
	}
	for range 20000 {
		m.ConductBack(0, zone.Ceiling, 0.2)
		m.ConductBack(1, zone.Ground, 0.2)
	}
	assert.InDelta(t, 400, ceiling.Surface(), 0.5)
	assert.InDelta(t, 400, ground.Surface(), 0.5)
}

// Gas cooled at the walls of a shut room sinks: the lower layer fouls and stays
// cool, and the upper one is used up faster than it shrinks by cooling.
func TestCooledGasSinksAlongTheWalls(t *testing.T) {
	m := build(t, engine.Scenario{
		V: 1, EndS: 600, Ambient: engine.Ambient{TempC: 20},
		Compartments: []engine.Compartment{{
			ID: "room", WidthM: 3.7, DepthM: 3.7, HeightM: 2.4, Lining: "gypsum",
			Initial: &engine.Initial{UpperC: ptr(250), InterfaceM: ptr(0.6), O2: ptr(0.08)},
		}},
		Openings: []engine.Opening{},
	})
	for range 1200 {
		m.Step(zone.StepS)
	}
	r := &m.Rooms[0]
	t.Logf("after a minute: interface %.2f m, lower layer %.1f %% oxygen, %.0f and %.0f °C", r.Interface(),
		100*r.Gas[zone.Lower].OxygenMoles(), r.Gas[zone.Lower].Temp()-zone.Kelvin, r.Gas[zone.Upper].Temp()-zone.Kelvin)
	assert.Greater(t, r.Interface(), 0.7)
	assert.Less(t, r.Gas[zone.Lower].OxygenMoles(), 0.2)
	assert.Less(t, r.Gas[zone.Lower].Temp()-zone.Kelvin, 60.0)
}
