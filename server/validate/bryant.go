package validate

import (
	"fmt"
	"math"
	"strings"

	"lintel/engine"
	"lintel/engine/handcalc"
	"lintel/engine/sim"
)

// bryantSettleS is how long the tests were run to be steady (the FDS input of
// the same tests ends at 1,800 s).
const bryantSettleS = 1800

// doorwayInflow runs the doorway velocity series.
func doorwayInflow(library sim.Library, data *table) (Series, error) {
	s := Series{
		ID: "bryant_doorway_velocity", Title: "inflow speed in a doorway by particle images",
		Notes: []string{
			"room 3.6 × 2.4 × 2.4 m, gypsum 25.4 mm, doorway 0.80 × 1.95 m, burner 0.30 m with its top at 0.30 m, air 21.5 °C, run to 1,800 s: as in the FDS input of the same tests",
			"the measured peak sits in the lowest decimetre, where a boundary layer and a vena contracta shape it; ours is the two-layer speed 0.1 m above the floor",
		},
	}
	var powers, ours, planes []float64
	for _, column := range []string{"34kW", "65kW", "96kW", "129kW", "160kW", "320kW", "511kW"} {
		kW, _ := burnerPower(column)
		p, err := start(library, bryantScenario(kW))
		if err != nil {
			return s, err
		}
		got, err := p.mean(bryantSettleS-60, bryantSettleS, neutral("door"), speed("door", 0.1), upper("room"))
		if err != nil {
			return s, err
		}
		s.FireS += bryantSettleS
		plane, peak := bryantMeasured(data, column)
		hand := handcalc.NeutralPlane(handcalc.HotGas{GasC: 21.5 + got[2], AmbientC: 21.5}) * 1.95
		s.add(&Neutral, column, plane, got[0], hand)
		s.add(&Speed, column+" peak", peak, -got[1], none)
		powers, ours, planes = append(powers, kW), append(ours, -got[1]), append(planes, got[0])
	}
	bryantLines(&s, powers, ours, planes)
	return s, nil
}

func bryantScenario(kW float64) engine.Scenario {
	return engine.Scenario{
		Name: fmt.Sprintf("doorway %.0f kW", kW), Ambient: engine.Ambient{TempC: 21.5}, EndS: bryantSettleS,
		Compartments: []engine.Compartment{roomOf("room", 3.6, 2.4, 2.4, lightGypsum, 0.0254)},
		Openings:     []engine.Opening{slot("door", "room", engine.Outside, 0, 0.80, 1.95, 1)},
		Fuels:        []engine.Fuel{burner("room", kW, 0.30, square(0.30), engine.Centre)},
	}
}

// bryantMeasured is the height where the inflow ends and its highest speed.
func bryantMeasured(data *table, column string) (plane, peak float64) {
	plane = math.NaN()
	above, speedAbove := math.NaN(), math.NaN()
	rows := data.all()
	for i := len(rows) - 1; i >= 0; i-- { // from the top down: the first turn to inflow
		z, v := rows[i].number("Height"), rows[i].number(column)
		if math.IsNaN(v) {
			continue
		}
		if math.IsNaN(plane) && v >= 0 && speedAbove < 0 {
			plane = z + (above-z)*v/(v-speedAbove)
		}
		above, speedAbove = z, v
		peak = math.Max(peak, v)
	}
	return plane, peak
}

func bryantLines(s *Series, powers, ours, planes []float64) {
	falls := true
	words := make([]string, len(planes))
	for i := range planes {
		falls = falls && (i == 0 || planes[i] < planes[i-1])
		words[i] = num(planes[i], 2)
	}
	s.further(falls, "the neutral plane falls as the fire grows", strings.Join(words, ", ")+" m")
	last := len(powers) - 1
	want := math.Cbrt(powers[last] / powers[0])
	got := ours[last] / ours[0]
	s.further(math.Abs(got/want-1) <= 0.2, "inflow speed grows with the cube root of power, within 20 %", fmt.Sprintf("× %.2f for × %.1f of power, cube root %.2f", got, powers[last]/powers[0], want))
}
