package zone_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"lintel/engine"
	"lintel/engine/zone"
)

// oven is a room of 800 °C with an open window, and one of air behind an open door.
func oven(t *testing.T, soot float64) *zone.Model {
	hot := &engine.Initial{UpperC: ptr(800), LowerC: ptr(800), InterfaceM: ptr(0.02)}
	m := build(t, engine.Scenario{
		V: 1, EndS: 60, Ambient: engine.Ambient{TempC: 20},
		Compartments: []engine.Compartment{
			{ID: "oven", WidthM: 3, DepthM: 3, HeightM: 2.4, Lining: "ceramic_fibre", Initial: hot},
			{ID: "next", WidthM: 3, DepthM: 3, HeightM: 2.4, Lining: "ceramic_fibre"},
		},
		Openings: []engine.Opening{
			{ID: "window", From: "oven", To: engine.Outside, Side: "A", Kind: engine.Window, SillM: 0.9, WidthM: 1, HeightM: 1, Open: ptr(1)},
			{ID: "door", From: "oven", To: "next", Kind: engine.Door, WidthM: 0.8, HeightM: 2, Open: ptr(0)},
		},
	})
	r := &m.Rooms[0]
	r.Gas[zone.Upper].Of[zone.Soot] = soot * r.Gas[zone.Upper].Mass
	for i := range r.Faces {
		for cell := range r.Faces[i].Temp {
			r.Faces[i].Temp[cell] = 800 + zone.Kelvin
		}
	}
	return m
}

// taken is the heat that the faces of a building have taken up, J.
func taken(m *zone.Model) float64 {
	sum := 0.0
	for i := range m.Rooms {
		for k := range m.Rooms[i].Faces {
			sum += m.Rooms[i].Faces[k].Taken
		}
	}
	return sum
}

// A hole in a room all of one temperature is black, whether what shows in it is
// smoke or walls: σ(T⁴ - T₀⁴) of its area (Kirchhoff).
func TestAnOpeningIsABlackHole(t *testing.T) {
	const dt = zone.StepS
	black := zone.Boltzmann * (math.Pow(800+zone.Kelvin, 4) - math.Pow(20+zone.Kelvin, 4))
	for _, soot := range []float64{0, 1e-4, 1e-2} {
		m := oven(t, soot)
		grey := m.ShineOut(dt)
		smoke, walls := m.Books.Lost/dt, -taken(m)/dt
		t.Logf("smoke %.0f %% opaque: %.1f kW from it and %.1f kW from the walls", 100*grey, smoke/1000, walls/1000)
		assert.InDelta(t, black, smoke+walls, 0.001*black)
		assert.InDelta(t, grey*black, smoke, 0.01*black, "a little more shows through the cracks of the door")
	}
}

// What shines into the next room is taken up there, and nothing is made or lost.
func TestWhatShinesNextDoorIsTakenUpThere(t *testing.T) {
	m := oven(t, 1e-4)
	m.Vents[0].Open, m.Vents[1].Open = 0, 1
	m.ShineOut(zone.StepS)
	next := 0.0
	for _, face := range m.Rooms[1].Faces {
		next += face.Taken
	}
	assert.Greater(t, next, m.Books.Lost, "the walls shine beside the smoke")
	leak := next * 0.02 // the shut window's cracks let a little out
	assert.InDelta(t, m.Books.Lost, taken(m), leak)
}
