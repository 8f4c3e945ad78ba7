package validate

import (
	"fmt"
	"math"

	"lintel/engine"
	"lintel/engine/handcalc"
	"lintel/engine/sim"
)

// closedCells runs the closed-door series with burners.
func closedCells(library sim.Library, data *table) (Series, error) {
	s := Series{
		ID: "fsri_compartment_closed", Title: "room with its door shut, gas burner starved of air",
		Tuned: "the oxygen limit was set a little below its published rule by the mean of these rooms, how a starved flame dies was shaped, and the cooled flow down along the walls was set, with them in view; no single row was fitted",
		Notes: append([]string{
			"leakage not stated: 0.04 m² in the upper half of the walls, chosen from this series' own pressures, so that their size is no test of the model: first pulses of tens of pascals, and later -3 to +1 Pa near the ceiling while the gas there is at 200 °C, which only leaks near the ceiling give",
			"the peak temperature is that of sensors 0.3 m below the ceiling, which read a tenth to a quarter above the mean of the layer",
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

// cellLeak is the leakage of the closed room, 0.04 m²; see the note of the series.
var cellLeak = engine.Opening{
	ID: "cracks", From: "room", To: engine.Outside, Kind: engine.Leak,
	SillM: 0.5 * cellHighM, HeightM: 0.5 * cellHighM, WidthM: 0.04 / (0.5 * cellHighM), Open: some(1),
}

// closedEndS is how long a closed room is watched for its fire to go out.
const closedEndS = 1500

func closedCell(library sim.Library, r row, kW float64) (closedRun, error) {
	c := closedRun{outS: math.Inf(1), least: math.Inf(1), ranS: closedEndS}
	sc := cell(r.name, 0, cellBurner(r.name, r.text("location"), kW), closedEndS)
	sc.Compartments[0].LeakM2 = some(0)
	sc.Openings = append(sc.Openings, cellLeak)
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
		if !math.IsInf(c.outS, 1) && p.TimeS() > c.outS+120 {
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
