package validate

import (
	"fmt"
	"math"

	"lintel/engine"
	"lintel/engine/handcalc"
	"lintel/engine/sim"
)

// hoodLagS is the middle of the 20 to 40 s by which the hood lagged.
const hoodLagS = 30

// furnitureRoom runs the furnished room as a burner that offers the measured
// power.
func furnitureRoom(library sim.Library, data *table) (Series, error) {
	s := Series{
		ID: "nbs_1room_furniture", Title: "furnished room through flashover",
		Notes: []string{
			"the fuel is a burner that offers the power measured by the hood, 30 s earlier (the hood lags the room by 20 to 40 s); the foam's own growth is not tested here",
			"the file has two flows, by probes and by thermocouples, that differ by 1.4 to 1.6; both are compared. At 480 to 510 s the thermocouples' inflow of 1.4 and outflow of 1.95 kg/s differ by far more than the 0.1 kg/s of fuel; their mean is ours within 4 %",
			"that power over 3.0 MJ per kg of air can reach 0.8 only with the probes' inflow of 1.0 kg/s; the temperatures measured with it drive 1.7, so the line cannot hold with this input and is left failing. The heat of the room sides with the larger flow: of the 2.35 to 2.6 MW measured, gas 710 K over the air takes along 1.0 MW at the probes' outflow of 1.2 kg/s and 1.6 MW at the thermocouples' 1.95 (1.15 kJ/(kg K)). The plane measured, 0.40, is that of one gas of 720 °C down to the floor (0.401 by hand); ours keeps cool air along the floor (the two strings of thermocouples put its top at 0.14 to 0.34 m and at 2.06 m)",
			"concrete floor taken as gypsum like the walls; burning area 1.12 m² as in 1RFURN6.in",
		},
	}
	rows := data.where("test", "1Room6")
	p, err := start(library, furnitureScenario(rows))
	if err != nil {
		return s, err
	}
	const doorH, doorW = 2.00, 1.29
	factor := handcalc.Vent{WidthM: doorW, HeightM: doorH}.Factor()
	last := 0.0
	var planes, ratios []float64
	for _, r := range rows {
		at := r.number("time_s")
		if at < 395 || at > 605 || math.Mod(at, 10) != 0 {
			continue
		}
		got, err := p.mean(at-5, at+4, upper("room"), neutral("door"), inflow("door"), outflow("door"), indoors("room"))
		if err != nil {
			return s, err
		}
		last = at
		hot := r.number("T_upper_B_C")
		gas := handcalc.HotGas{GasC: hot, AmbientC: 23.4}
		s.add(&LayerRise, r.name, (hot+r.number("T_upper_A_C"))/2-23.4, got[0], none)
		s.add(&Neutral, r.name, r.number("z_neutral_m"), got[1], handcalc.NeutralPlane(gas)*doorH)
		s.add(&Flow, r.name+" in, probes", r.number("mdot_in_vel_kg_s"), got[2], 0.5*factor)
		s.add(&Flow, r.name+" out, probes", r.number("mdot_out_vel_kg_s"), got[3], 0.5*factor)
		s.add(&Flow, r.name+" in, thermocouples", r.number("mdot_in_TC_kg_s"), got[2], 0.5*factor)
		s.add(&Flow, r.name+" out, thermocouples", r.number("mdot_out_TC_kg_s"), got[3], 0.5*factor)
		if at >= 480 && at <= 510 {
			planes = append(planes, got[1]/doorH)
			ratios = append(ratios, got[4]/1000/(3.0*got[2]))
		}
	}
	s.FireS = last
	furnitureLines(s.line, "measured power offered, 480 to 510 s", planes, ratios)
	return s, richRoomsOf(library, &s)
}

func furnitureScenario(rows []row) engine.Scenario {
	var powers [][2]float64
	for _, r := range rows {
		at, kW := math.Max(0, r.number("time_s")-hoodLagS), r.number("HRR_kW")
		if n := len(powers); !math.IsNaN(kW) && (n == 0 || at > powers[n-1][0]) {
			powers = append(powers, [2]float64{at, math.Max(0, kW)})
		}
	}
	return engine.Scenario{
		Name: "furnished room", Ambient: engine.Ambient{TempC: 23.4}, EndS: 700,
		Compartments: []engine.Compartment{roomOf("room", 2.26, 3.94, 2.31, "gypsum", 0.016)},
		Openings:     []engine.Opening{slot("door", "room", engine.Outside, 0, 1.29, 2.00, 1)},
		Fuels:        []engine.Fuel{{ID: "seat", In: "room", Kind: engine.GasBurner, HRRKW: powers, BaseM: some(0.3), DiameterM: some(1.19)}},
	}
}

// furnitureLines asks of a flashed-over room where its neutral plane is and how
// much of the air it lets in burns there.
func furnitureLines(add func(holds bool, asks, found string), what string, planes, ratios []float64) {
	lowest, highest := extremes(planes)
	add(lowest >= 0.36 && highest <= 0.43, what+": neutral plane 0.36 to 0.43 of the opening's height after flashover", fmt.Sprintf("%.3f to %.3f", lowest, highest))
	least, most := extremes(ratios)
	add(least >= 0.8 && most <= 1.15, what+": heat released inside 0.8 to 1.15 of 3.0 MJ per kg of air let in", fmt.Sprintf("%.2f to %.2f", least, most))
}

func extremes(list []float64) (least, most float64) {
	least, most = math.Inf(1), math.Inf(-1)
	for _, x := range list {
		least, most = math.Min(least, x), math.Max(most, x)
	}
	return least, most
}
