package zone_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"lintel/engine"
	"lintel/engine/zone"
)

// burnerRoom is a room with a door and a burner that never changes.
func burnerRoom(kW float64) engine.Scenario {
	return engine.Scenario{
		V: 1, EndS: 600, Ambient: engine.Ambient{TempC: 20},
		Compartments: []engine.Compartment{{ID: "room", WidthM: 2.8, DepthM: 2.8, HeightM: 2.13, Lining: "ceramic_fibre"}},
		Openings:     []engine.Opening{{ID: "door", From: "room", To: engine.Outside, Kind: engine.Door, WidthM: 0.74, HeightM: 1.83, Open: ptr(1)}},
		Fuels:        []engine.Fuel{{ID: "burner", In: "room", Kind: engine.GasBurner, HRRKW: [][2]float64{{0, 0}, {20, kW}}}},
	}
}

// Euler's method is of first order: halving the step halves the change.
func TestHalvingTheStepHalvesTheError(t *testing.T) {
	at := func(dt float64) [2]float64 {
		m := build(t, burnerRoom(80))
		for range int(math.Round(40 / dt)) {
			m.Step(dt)
		}
		return [2]float64{m.Rooms[0].Gas[zone.Upper].Temp(), m.Rooms[0].Interface()}
	}
	finest, fine, middle, coarse := at(0.00625), at(0.0125), at(0.025), at(0.05)
	for k, what := range []string{"temperature", "interface"} {
		first := (coarse[k] - middle[k]) / (middle[k] - fine[k])
		second := (middle[k] - fine[k]) / (fine[k] - finest[k])
		t.Logf("%s %.5f, %.5f, %.5f, %.5f: ratios %.2f and %.2f", what, coarse[k], middle[k], fine[k], finest[k], first, second)
		assert.InDelta(t, 2, first, 0.4, what)
		assert.InDelta(t, 2, second, 0.4, what)
	}
	assert.InDelta(t, finest[0], coarse[0], 0.5, "the usual step is within half a kelvin")
}

// A sealed room warmed at a steady rate lets out what its heat makes: enthalpy in
// is enthalpy out, the first law at constant pressure, but for what the gas that
// stays holds more because its heat capacity rises.
func TestAWarmedRoomLetsOutItsHeat(t *testing.T) {
	sc := burnerRoom(20)
	sc.Openings[0].Open = ptr(0)
	m := build(t, sc)
	for range 800 {
		m.Step(zone.StepS)
	}
	b := m.Books
	let := b.Out.Heat - b.In.Heat
	assert.InEpsilon(t, b.Released-b.Lost, let, 0.05)
	assert.Less(t, let, b.Released-b.Lost)
	assert.Positive(t, m.Rooms[0].Pressure)
}

// Newton's method needs about two steps, even while everything moves.
func TestPressuresAreFoundInAFewTries(t *testing.T) {
	m := build(t, burnerRoom(300))
	for range 2000 {
		m.Step(zone.StepS)
	}
	tries := float64(m.Tries()) / float64(m.Steps)
	t.Logf("%.2f Newton steps a time step", tries)
	assert.Less(t, tries, 3.0)
}

// A room without any opening or crack meets the cap of its pressure and stays
// there: a pane or door would have given way.
func TestASealedRoomMeetsItsCap(t *testing.T) {
	sc := burnerRoom(100)
	sc.Openings = nil
	sc.Compartments[0].LeakM2 = ptr(0)
	m := build(t, sc)
	highest := 0.0
	for range 4000 {
		m.Step(zone.StepS)
		highest = max(highest, m.Rooms[0].Pressure)
	}
	assert.InEpsilon(t, 1500, highest, 0.1)
	assert.Less(t, m.Rooms[0].Pressure, highest, "the fire has gone out")
	assert.Less(t, math.Abs(m.Rooms[0].Gas[zone.Upper].Volume()+m.Rooms[0].Gas[zone.Lower].Volume()-m.Rooms[0].Volume), 1e-3)
}
