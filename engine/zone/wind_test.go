package zone_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"lintel/engine"
	"lintel/engine/zone"
)

// Wind through two equal openings, one to windward and one to lee: each takes
// half of the difference of wind pressure, so the flow is C A √(2ρ Δp/2) with
// Δp = (0.7 + 0.3) ½ρU².
func TestWindBlowsThroughTwoOpenings(t *testing.T) {
	const wind, width, height = 8.9, 0.9, 1.0
	window := func(id string, side engine.Side) engine.Opening {
		return engine.Opening{ID: id, From: "room", To: engine.Outside, Side: side, Kind: engine.Window, SillM: 0.8, WidthM: width, HeightM: height, Open: ptr(1)}
	}
	m := build(t, engine.Scenario{
		V: 1, EndS: 60, Ambient: engine.Ambient{TempC: 20, WindMS: wind, WindFrom: engine.Alpha},
		Compartments: []engine.Compartment{{ID: "room", WidthM: 4, DepthM: 4, HeightM: 2.4, Lining: "gypsum", LeakM2: ptr(0)}},
		Openings:     []engine.Opening{window("windward", engine.Alpha), window("lee", engine.Charlie)},
	})
	for range 400 {
		m.Step(zone.StepS)
	}
	density := zone.Density / m.Ambient
	across := 0.5 * density * wind * wind
	want := zone.FlowCoefficient * width * height * math.Sqrt(2*density*across/2)
	assert.InEpsilon(t, want, m.Vents[0].Flow.TotalIn(), 1e-3)
	assert.InEpsilon(t, want, m.Vents[1].Flow.TotalOut(), 1e-3)
	assert.InDelta(t, (0.7-0.3)/2*across, m.Rooms[0].Pressure, 0.01)
}

// Trends that any fire model must show.
func TestTrends(t *testing.T) {
	after := func(change func(*engine.Scenario)) *zone.Model {
		sc := burnerRoom(150)
		change(&sc)
		m := build(t, sc)
		for range 6000 {
			m.Step(zone.StepS)
		}
		return m
	}
	hot := func(m *zone.Model) float64 { return m.Rooms[0].Gas[zone.Upper].Temp() }
	plain := after(func(*engine.Scenario) {})
	wide := after(func(sc *engine.Scenario) { sc.Openings[0].WidthM *= 1.5 })
	big := after(func(sc *engine.Scenario) { sc.Fuels[0].HRRKW[1][1] *= 2 })
	cold := after(func(sc *engine.Scenario) { sc.Compartments[0].Lining = "steel" })
	corner := after(func(sc *engine.Scenario) { sc.Fuels[0].Place = engine.Corner })
	assert.Greater(t, wide.Vents[0].Flow.TotalOut(), plain.Vents[0].Flow.TotalOut(), "a wider door passes more")
	assert.Less(t, hot(wide), hot(plain), "and cools a fire that wants for nothing")
	assert.Greater(t, hot(big), hot(plain)+50, "a larger fire is hotter")
	assert.Less(t, big.Vents[0].Flow.Neutral, plain.Vents[0].Flow.Neutral, "and its neutral plane lower")
	assert.Less(t, hot(cold), hot(plain)-20, "heavy linings take more heat")
	assert.Greater(t, hot(corner), hot(plain), "a corner fire draws less air")
	assert.Greater(t, corner.Rooms[0].Interface(), plain.Rooms[0].Interface())
}
