package validate

import (
	"fmt"
	"math"
	"strconv"
	"strings"

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
	s := Series{ID: "fsri_compartment_open", Title: "room with an open door, gas burner", Notes: cellNotes}
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
	s.add(&Pressure, r.name+" high", r.number("P_0.3_Pa"), got[5], p.stack(zero, 2.1, 20))
	s.add(&Pressure, r.name+" low", -r.number("P_2.1_Pa"), -got[6], p.stack(0.3, zero, 20))
}

// closedCells runs the closed-door series with burners.
func closedCells(library sim.Library, data *table) (Series, error) {
	s := Series{
		ID: "fsri_compartment_closed", Title: "room with its door shut, gas burner starved of air",
		Notes: append([]string{
			"leakage not stated: 0.05 m², which gives first pulses of the measured tens of pascals, so that the pulse's size is no test of the model",
			"500 kW burners were shut off by hand and are compared at that moment; furniture tests are left out (their free burning is not known)",
		}, cellNotes...),
	}
	var ran = map[string]closedRun{}
	for _, r := range data.all() {
		kW, isBurner := burnerPower(r.text("fuel"))
		if !isBurner || math.IsNaN(r.number("t_end_s")) {
			continue
		}
		key := r.text("fuel") + "/" + r.text("location")
		if _, done := ran[key]; !done {
			run, err := closedCell(library, r, kW)
			if err != nil {
				return s, err
			}
			ran[key] = run
			s.FireS += run.ranS
		}
		compareClosedCell(&s, r, ran[key])
	}
	closedLines(&s, ran)
	return s, nil
}

// burnerPower reads "250kW" or "100kWSB".
func burnerPower(fuel string) (float64, bool) {
	var kW float64
	if n, _ := fmt.Sscanf(fuel, "%fkW", &kW); n == 1 {
		return kW, true
	}
	return 0, false
}

// closedRun is what became of one burner behind a shut door.
type closedRun struct {
	outS         float64 // when its power fell below a tenth of what was offered; +Inf if it never did
	upper, lower float64 // oxygen then, vol %
	first        float64 // highest over-pressure near the ceiling, Pa
	firstS       float64
	least        float64 // lowest after that
	leastS       float64
	ranS         float64
	trace        []closedMoment
}

type closedMoment struct{ at, upper, lower, hot float64 }

// cellLeakM2 is the leakage of the closed room; see the note of the series.
const cellLeakM2 = 0.05

// closedEndS is how long a closed room is watched for its fire to go out.
const closedEndS = 1500

func closedCell(library sim.Library, r row, kW float64) (closedRun, error) {
	c := closedRun{outS: math.Inf(1), least: math.Inf(1), ranS: closedEndS}
	sc := cell(r.name, 0, cellBurner(r.name, r.text("location"), kW), closedEndS)
	sc.Compartments[0].LeakM2 = some(cellLeakM2)
	p, err := start(library, sc)
	if err != nil {
		return c, err
	}
	for p.TimeS() < closedEndS {
		got, err := p.mean(p.TimeS(), p.TimeS()+1, oxygenAt("room", cellHighM-0.6), oxygenAt("room", cellHighM-1.8), over("room", cellHighM-0.3), power, upper("room"))
		if err != nil {
			return c, err
		}
		c.watch(p.TimeS(), kW, got)
		if !math.IsInf(c.outS, 1) && p.TimeS() > c.outS+60 {
			c.ranS = p.TimeS()
			break
		}
	}
	return c, nil
}

// watch keeps what matters of one second.
func (c *closedRun) watch(at, offered float64, got []float64) {
	c.trace = append(c.trace, closedMoment{at: at, upper: got[0], lower: got[1], hot: got[4]})
	if at < 60 && got[2] > c.first {
		c.first, c.firstS = got[2], at
	}
	if got[2] < c.least && at > c.firstS {
		c.least, c.leastS = got[2], at
	}
	if math.IsInf(c.outS, 1) && at > 30 && got[3] < 0.1*offered {
		c.outS, c.upper, c.lower = at, got[0], got[1]
	}
}

// at is the moment nearest a time.
func (c *closedRun) at(seconds float64) closedMoment {
	i := int(math.Min(math.Max(seconds-1, 0), float64(len(c.trace)-1)))
	return c.trace[i]
}

func compareClosedCell(s *Series, r row, run closedRun) {
	end, hand := r.number("t_end_s"), none
	kW, _ := burnerPower(r.text("fuel"))
	rise := handcalc.Beyler(handcalc.ClosedRoom{
		Room:   handcalc.Room{LengthM: cellWideM, WidthM: cellWideM, HeightM: cellHighM},
		Lining: handcalc.Lining{ConductivityKWMK: 0.00017, DensityKgM3: 960, HeatKJKgK: 1.1, ThicknessM: 0.0127},
		HRRKW:  kW, AmbientC: 20,
	}, r.number("t_Tmax"))
	hottest := 0.0
	for _, m := range run.trace {
		hottest = math.Max(hottest, m.hot)
	}
	s.add(&ClosedRise, r.name, r.number("T_max_0.3m_C")-20, hottest, rise)
	moment := closedMoment{upper: run.upper, lower: run.lower}
	if kW < 500 {
		s.add(&Extinction, r.name, end, run.outS, hand)
	} else {
		moment = run.at(end)
	}
	s.add(&Oxygen, r.name+" upper", r.number("O2_upper_0.6m_at_end"), moment.upper, none)
	s.add(&Oxygen, r.name+" lower", r.number("O2_lower_1.8m_at_end"), moment.lower, none)
	if peak := s.add(&Pressure, r.name, r.number("P_peak_0.3m_Pa"), run.first, none); peak.Measured > 90 {
		peak.Apart = "sensor clips near 125 Pa"
	}
}

// spell is what became of a burner, in words.
func (c closedRun) spell(name string) string {
	if math.IsInf(c.outS, 1) {
		return name + " never"
	}
	return fmt.Sprintf("%s %.0f s at %.1f/%.1f %%", name, c.outS, c.upper, c.lower)
}

func closedLines(s *Series, ran map[string]closedRun) {
	out, upperOK, lowerOK, upFirst, downLater, small := 0, 0, 0, 0, 0, 0
	slow, quick := math.Inf(1), 0.0
	var found []string
	for _, key := range []string{"100kW/Back", "100kW/Corner", "100kWSB/Back", "100kWSB/Corner", "250kW/Back", "250kW/Corner", "500kW/Back", "500kW/Corner", "500kW/Side"} {
		run, ok := ran[key]
		if !ok {
			continue
		}
		if run.first > 1 {
			upFirst++
		}
		if run.least < 0 {
			downLater++
		}
		found = append(found, run.spell(key))
		if key[0] == '5' {
			continue
		}
		small++
		if !math.IsInf(run.outS, 1) {
			out++
		}
		if run.upper >= 6 && run.upper <= 10 {
			upperOK++
		}
		if run.lower >= 8 && run.lower <= 13 {
			lowerOK++
		}
		if key[0] == '1' {
			slow = math.Min(slow, run.outS)
		} else {
			quick = math.Max(quick, run.outS)
		}
	}
	count := func(n, of int) string { return fmt.Sprintf("%d of %d", n, of) }
	s.line(out == small, "100 and 250 kW fires go out by themselves", count(out, small)+": "+strings.Join(found, "; "))
	s.line(upperOK == small, "oxygen at extinction, 0.6 m below the ceiling, 6 to 10 vol %", count(upperOK, small))
	s.line(lowerOK == small, "oxygen at extinction, 1.8 m below the ceiling, 8 to 13 vol %", count(lowerOK, small))
	s.line(quick < slow, "the larger fire goes out sooner", fmt.Sprintf("250 kW by %s s, 100 kW not before %s s", significant(quick), significant(slow)))
	s.line(upFirst == len(ran) && downLater == len(ran), "pressure first up, then below that outside", fmt.Sprintf("up %d, then down %d of %d", upFirst, downLater, len(ran)))
}
