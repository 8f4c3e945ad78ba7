package validate

import (
	"fmt"
	"math"
	"strings"

	"lintel/engine"
	"lintel/engine/sim"
)

// leastSign is the measured pressure from which its sign counts: the sensors
// stayed off zero by some tenths of a pascal after the fires.
const leastSign = 0.5

// unzeroedPa is what the sensors were seen to be off zero by once the fire was
// out, some 1 Pa.
const unzeroedPa = 1.0

// leastStep is the change of a pressure whose direction counts. Chosen by us,
// above the noise of minute averages.
const leastStep = 0.5

// houseEvent is an opening with the minutes before and after it to compare.
type houseEvent struct {
	name          string
	before, after float64
}

// houseTest is a house as it stood before ignition, and how its file was sampled.
type houseTest struct {
	scenario engine.Scenario
	everyS   float64 // between the published samples
}

// gauged is a house test: pressures by tap and minute.
type gauged struct {
	taps           []tap
	measured, ours map[float64][]float64
}

// house runs a test and compares every minute of every tap, and what more there
// is to compare in a minute.
func house(library sim.Library, test houseTest, rows []row, taps []tap, s *Series, more func(p *play, r row)) (gauged, error) {
	g := gauged{taps: taps, measured: map[float64][]float64{}, ours: map[float64][]float64{}}
	sc := test.scenario
	p, err := start(library, sc)
	if err != nil {
		return g, err
	}
	logger, err := newLogger(library, test, p, taps)
	if err != nil {
		return g, err
	}
	off := sc.Fuels[0].HRRKW[len(sc.Fuels[0].HRRKW)-1][0]
	for _, r := range rows {
		at := r.number("t_mid_s")
		if at > off {
			break // the fire is out
		}
		got, err := logger.upTo(at + 30)
		if err != nil {
			return g, err
		}
		measured := make([]float64, len(taps))
		for i, t := range taps {
			measured[i] = r.number(t.column)
			point := s.add(&Pressure, r.name+" "+t.column, measured[i], got[i], none)
			if math.Abs(measured[i]) < leastSign {
				point.Apart = "too near zero"
			}
		}
		g.measured[at], g.ours[at] = measured, got
		if more != nil {
			more(p, r)
		}
	}
	s.FireS += off
	return g, nil
}

// judge checks the direction in which each opening changed each pressure.
func (g gauged) judge(s *Series, test string, events []houseEvent) {
	good, all := 0, 0
	var wrong []string
	for _, e := range events {
		for i, t := range g.taps {
			measured := g.measured[e.after][i] - g.measured[e.before][i]
			ours := g.ours[e.after][i] - g.ours[e.before][i]
			if math.Abs(measured) < leastStep {
				continue
			}
			all++
			if measured*ours > 0 {
				good++
				continue
			}
			wrong = append(wrong, fmt.Sprintf("%s at %s measured %+.1f ours %+.1f", e.name, t.column, measured, ours))
		}
	}
	found := fmt.Sprintf("%d of %d", good, all)
	if len(wrong) > 0 {
		found += "; wrong: " + strings.Join(wrong, "; ")
	}
	s.line(good == all, test+": each opening moves each pressure the right way", found)
}

// pressureLines are the lines on signs and magnitudes of a house.
func pressureLines(s *Series) {
	points := s.points(&Pressure)
	signs, furthest := 0, 0.0
	for _, p := range points {
		if p.Ours*p.Measured > 0 {
			signs++
		} else {
			furthest = math.Max(furthest, math.Abs(p.Ours))
		}
	}
	found := share(float64(signs)/float64(max(1, len(points))), len(points))
	if signs < len(points) {
		found += "; ours within " + num(furthest, 1) + " Pa of zero on every other, where the sensors were off by some 1 Pa"
	}
	s.line(signs == len(points), "sign of every pressure", found)
	fair := 0
	for _, p := range points {
		if off := math.Abs(p.Ours - p.Measured); off <= 0.5*math.Abs(p.Measured) || off <= unzeroedPa {
			fair++
		}
	}
	s.line(within(points, 0.5, 1.5) == 1, "magnitude within 50 %, every tap and minute",
		share(within(points, 0.5, 1.5), len(points))+"; within 50 % or 1 Pa "+share(float64(fair)/float64(max(1, len(points))), len(points)))
}
