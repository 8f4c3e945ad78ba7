package validate

import (
	"math"
	"strconv"

	"lintel/engine"
	"lintel/engine/handcalc"
	"lintel/engine/sim"
)

// The compartment of the open- and closed-door series: 3.7 × 3.7 × 2.4 m with a
// doorway of 0.9 × 2.0 m.
const (
	cellWideM, cellHighM = 3.7, 2.4
	cellDoorW, cellDoorH = 0.9, 2.0
)

// cell is that compartment with its door open or shut.
func cell(name string, doorOpen float64, fuel engine.Fuel, endS float64) engine.Scenario {
	return engine.Scenario{
		Name: name, Ambient: engine.Ambient{TempC: 20}, EndS: endS,
		Compartments: []engine.Compartment{roomOf("room", cellWideM, cellWideM, cellHighM, "gypsum", 0.0127)},
		Openings:     []engine.Opening{slot("door", "room", engine.Outside, 0, cellDoorW, cellDoorH, doorOpen)},
		Fuels:        []engine.Fuel{fuel},
	}
}

var cellNotes = []string{
	"lining not stated with the data: taken as 12.7 mm gypsum board on every side",
	"air outside 20 °C (not stated)",
	"burners at the back or side stand at a wall, those in the corner in a corner; a square burner of 0.6 m with its top at 0.3 m, of 0.3 m where the name says so (height not stated)",
}

// cellDepths are the thermocouples, m below the ceiling, lowest first.
var cellDepths = []float64{2.1, 1.8, 1.5, 1.2, 0.9, 0.6, 0.3, 0.025}

// openCells runs the open-door series: each burner and place once, against every
// replicate.
func openCells(library sim.Library, data *table) (Series, error) {
	s := Series{ID: "fsri_compartment_open", Title: "room with an open door, gas burner",
		Tuned: "the wall film, the cooled flow down along the walls and the mixing of the inflow were chosen with its means watched beside other series; no single row was fitted",
		Notes: append([]string{
			"the hand value of a pressure is the weight of the temperatures measured in the same test: the sensors show half of it, so pressures stand apart",
		}, cellNotes...)}
	ran := map[string][]float64{}
	for _, r := range data.all() {
		key := burnerName(r.name) + "/" + r.text("location")
		if ran[key] == nil {
			got, err := openCell(library, r, &s)
			if err != nil {
				return s, err
			}
			ran[key] = got
		}
		compareOpenCell(&s, r, ran[key])
	}
	speeds := s.points(&Speed)
	s.line(within(speeds, 0.75, 1.25) == 1, "speed at the top of the door within 25 %, every row", share(within(speeds, 0.75, 1.25), len(speeds)))
	return s, nil
}

// burnerName is the part of an experiment's name before the first underscore.
func burnerName(name string) string {
	for i, c := range name {
		if c == '_' {
			return name[:i]
		}
	}
	return name
}

// cellBurner stands as the experiment's name says.
func cellBurner(name, location string, kW float64) engine.Fuel {
	side := 0.6
	if burnerName(name) == "100kWSB" {
		side = 0.3
	}
	return burner("room", kW, 0.3, square(side), place(location))
}

func openCell(library sim.Library, r row, s *Series) ([]float64, error) {
	end := r.number("t_off_s")
	if math.IsNaN(end) {
		end = 600
	}
	p, err := start(library, cell(r.name, 1, cellBurner(r.name, r.text("location"), r.number("Q_kW")), end))
	if err != nil {
		return nil, err
	}
	s.FireS += end
	return p.mean(end-120, end, upper("room"), layer("room"), speed("door", 1.75), neutral("door"),
		oxygenAt("room", cellHighM-0.6), over("room", cellHighM-0.3), over("room", cellHighM-2.1))
}

func compareOpenCell(s *Series, r row, got []float64) {
	var p profile
	for _, depth := range cellDepths {
		p.heights = append(p.heights, cellHighM-depth)
		p.temps = append(p.temps, r.number("T_"+strconv.FormatFloat(depth, 'f', -1, 64)))
	}
	z, _, upperC := p.layers(cellHighM)
	kW := r.number("Q_kW")
	rise, _ := handcalc.MQH(handcalc.OpenRoom{
		Room:   handcalc.Room{LengthM: cellWideM, WidthM: cellWideM, HeightM: cellHighM},
		Vent:   handcalc.Vent{WidthM: cellDoorW, HeightM: cellDoorH},
		Lining: handcalc.Lining{ConductivityKWMK: 0.00017, DensityKgM3: 960, HeatKJKgK: 1.1, ThicknessM: 0.0127},
		HRRKW:  kW,
	}, r.number("t_off_s")-60)
	gas := handcalc.HotGas{GasC: 20 + rise, AmbientC: 20}
	plane := handcalc.NeutralPlane(gas) * cellDoorH
	top := handcalc.StackPressure(gas) * (1.75 - plane)
	s.add(&LayerRise, r.name, upperC-20, got[0], rise)
	s.add(&LayerDepth, r.name, cellHighM-z, cellHighM-got[1], none)
	s.add(&Speed, r.name, r.number("v_1.75"), got[2], 0.7*handcalc.SpeedFrom(top, handcalc.AirDensity(gas.GasC)))
	noisy := s.add(&Neutral, r.name, r.number("zn_m"), got[3], plane)
	if kW <= 100 {
		noisy.Apart = "speeds below 0.2 m/s near the plane: the measured one is noisy"
	}
	s.add(&OxygenSpent, r.name, 20.95-r.number("O2_0.6_pct"), 20.95-got[4], none)
	// The hand value is the weight of the measured temperatures themselves.
	zero := r.number("zn_m")
	high := s.add(&Pressure, r.name+" high", r.number("P_0.3_Pa"), got[5], p.stack(zero, 2.1, 20))
	high.Apart = "half of the weight of the temperatures measured with them"
	low := s.add(&Pressure, r.name+" low", -r.number("P_2.1_Pa"), -got[6], p.stack(0.3, zero, 20))
	low.Apart = high.Apart
}
