package zone_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"lintel/engine"
	"lintel/engine/zone"
)

// Smoke in a shut room settles on its cold walls and stays in the air where they
// are as warm as it. By hand: 400 °C on walls of 20 °C, some 15 to 25 W/(m² K), is
// 6 to 10 kW/m², v = 1.05e-6 m/s for each W/m² is 6 to 10 mm/s, over 63 m² and 33 m³
// 1.2 to 2 per cent a second at first, and the gas cools within some 10 s.
func TestSmokeSettlesOnColdWalls(t *testing.T) {
	soot := func(celsius float64) float64 {
		m := build(t, engine.Scenario{
			V: 1, EndS: 600, Ambient: engine.Ambient{TempC: 20},
			Compartments: []engine.Compartment{{
				ID: "room", WidthM: 3.7, DepthM: 3.7, HeightM: 2.4, Lining: "steel", LeakM2: ptr(0),
				Initial: &engine.Initial{UpperC: ptr(celsius), LowerC: ptr(celsius), InterfaceM: ptr(0.1), O2: ptr(0.05)},
			}},
			Openings: []engine.Opening{},
		})
		r := &m.Rooms[0]
		r.Gas[zone.Upper].Of[zone.Soot] = 0.01
		r.Gas[zone.Lower].Of[zone.Soot] = 0
		for i := range r.Faces { // cold walls, or warm ones
			for k := range r.Faces[i].Temp {
				r.Faces[i].Temp[k] = m.Ambient
			}
		}
		for range 100 {
			m.Step(zone.StepS)
		}
		return (r.Gas[zone.Upper].Of[zone.Soot] + r.Gas[zone.Lower].Of[zone.Soot]) / 0.01
	}
	hot, cool := soot(400), soot(20)
	t.Logf("left in the air after 5 s: %.4f at 400 °C, %.4f at the walls' temperature", hot, cool)
	assert.Less(t, hot, 0.97)
	assert.Greater(t, hot, 0.9)
	assert.InDelta(t, 1, cool, 1e-6)
}
