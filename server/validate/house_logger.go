package validate

import (
	"math"

	"lintel/engine"
	"lintel/engine/sim"
)

// sampledNote says of both houses how they are read.
const sampledNote = "read as published: the mean of samples of half a minute, less the pressure before ignition (the sensors' readings then, some -1.7 and -1.9 Pa in the two-storey house, were taken off); rooms and the air outside start as measured; signs count only where the measured pressure is more than 0.5 Pa from zero"

// logger reads a house as its published file (firemodels/exp, UL_NIJ_Houses) does.
// The file holds a sample every quarter of a minute or so, each the mean of that
// long before it and after it: the burner's flow stands in it at 0.37, 0.87 and
// 1.00 of its full value at 0, 15 and 30 s. The readings before ignition are taken
// off: they were some -1.7 and -1.9 Pa on every sensor of the two tests of the
// two-storey house and nought in the one-storey house, and the file lies by as much
// above the sensors' own (ulfsri/fsri-residential-gasburner-2016).
type logger struct {
	read    func(from, to float64) ([]float64, error) // mean at each tap
	everyS  float64
	nextS   float64
	unlit   []float64 // Pa at each tap before ignition
	earlier []float64 // mean over the stretch before the next sample
}

func newLogger(library sim.Library, test houseTest, p *play, taps []tap) (*logger, error) {
	gauges := make([]gauge, len(taps))
	for i, t := range taps {
		gauges[i] = over(t.room, t.height)
	}
	unlit := test.scenario
	unlit.Fuels, unlit.Moves = nil, nil
	before, err := start(library, unlit)
	if err != nil {
		return nil, err
	}
	nought, err := before.mean(1, 5, gauges...)
	read := func(from, to float64) ([]float64, error) { return p.mean(from, to, gauges...) }
	return &logger{read: read, everyS: test.everyS, unlit: nought, earlier: make([]float64, len(taps))}, err
}

// upTo is the mean of the samples from the last call up to a time.
func (l *logger) upTo(end float64) ([]float64, error) {
	sums := make([]float64, len(l.unlit))
	samples := math.Ceil((end - l.nextS) / l.everyS)
	for ; l.nextS < end; l.nextS += l.everyS {
		later, err := l.read(l.nextS, l.nextS+l.everyS)
		if err != nil {
			return nil, err
		}
		for i := range later {
			later[i] -= l.unlit[i]
			sums[i] += (l.earlier[i] + later[i]) / (2 * samples)
		}
		l.earlier = later
	}
	return sums, nil
}

// standing gives every room the temperature it had before ignition, and the air
// outside that of the front door's probes: °C, means of the published trees.
func standing(sc *engine.Scenario, outside float64, inside func(room string) float64) {
	sc.Ambient.TempC = outside
	for i := range sc.Compartments {
		c := &sc.Compartments[i]
		c.Initial = &engine.Initial{UpperC: some(inside(c.ID)), LowerC: some(inside(c.ID))}
	}
}

// throughout is a house of one temperature.
func throughout(temp float64) func(string) float64 {
	return func(string) float64 { return temp }
}
