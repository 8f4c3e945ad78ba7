package gauge

import (
	"math"
	"math/rand/v2"
	"strconv"

	"lintel/engine"
	"lintel/engine/zone"
)

// Audit is how well the books of one or more runs close. The errors are shares
// of all that was there or came in.
type Audit struct {
	Runs      int
	Mass      float64
	Enthalpy  float64
	Species   float64 // the worst of all
	Volume    float64 // worst share by which the layers failed to fill a room
	Steady    float64 // the mean of the same over the last second before a move, of the worst of them
	Negative  int     // layers with a negative amount of something
	NotNumber int
}

// The steps from one move of a house to the next, and those of them before the next
// that count as steady: in a single step of them a fire may still jump (it lights a
// layer, or a stream turns), but an error that lasts is one of the method.
const (
	moveEvery   = 80
	steadySteps = 20
)

// Shake runs a random house for 60 s with a move every four and audits it.
func Shake(seed uint64, materials engine.Materials) (Audit, error) {
	m, err := zone.New(RandomHouse(seed), materials)
	if err != nil {
		return Audit{}, err
	}
	r := rand.New(rand.NewPCG(seed, 5))
	a := Audit{Runs: 1}
	lasting := 0.0
	for step := range 1200 {
		since := step % moveEvery
		if since == moveEvery-1 {
			Disturb(m, r)
			a.Steady = max(a.Steady, lasting/steadySteps)
			lasting = 0
		}
		m.Step(zone.StepS)
		wrong := VolumeError(m)
		a.Volume = max(a.Volume, wrong)
		if since >= moveEvery-1-steadySteps && since < moveEvery-1 {
			lasting += wrong
		}
	}
	a.Close(m)
	return a, nil
}

// Join keeps the worst of two audits.
func (a Audit) Join(b Audit) Audit {
	return Audit{
		Runs: a.Runs + b.Runs, Mass: max(a.Mass, b.Mass), Enthalpy: max(a.Enthalpy, b.Enthalpy),
		Species: max(a.Species, b.Species), Volume: max(a.Volume, b.Volume), Steady: max(a.Steady, b.Steady),
		Negative: a.Negative + b.Negative, NotNumber: a.NotNumber + b.NotNumber,
	}
}

// VolumeError is the worst share by which the layers of a room fail to fill it.
func VolumeError(m *zone.Model) float64 {
	worst := 0.0
	for i := range m.Rooms {
		room := &m.Rooms[i]
		filled := room.Gas[zone.Lower].Volume() + room.Gas[zone.Upper].Volume()
		worst = max(worst, math.Abs(filled/room.Volume-1))
	}
	return worst
}

// Close closes the books of a model.
func (a *Audit) Close(m *zone.Model) {
	var now zone.Layer
	for i := range m.Rooms {
		for layer := range m.Rooms[i].Gas {
			a.count(&now, &m.Rooms[i].Gas[layer])
		}
	}
	b := &m.Books
	a.Mass = max(a.Mass, apart(b.Start.Mass+b.In.Mass-b.Out.Mass, now.Mass, b.Start.Mass+b.In.Mass))
	heat := b.Start.Heat + b.In.Heat - b.Out.Heat + b.Released - b.Lost
	a.Enthalpy = max(a.Enthalpy, apart(heat, now.Heat, b.Start.Heat+b.In.Heat))
	for k := range now.Of {
		all := b.Start.Of[k] + b.In.Of[k]
		if all > 1e-9 {
			a.Species = max(a.Species, apart(all-b.Out.Of[k], now.Of[k], all))
		}
	}
}

func (a *Audit) count(now, gas *zone.Layer) {
	now.Mass += gas.Mass
	now.Heat += gas.Heat
	temp := gas.Temp()
	if math.IsNaN(temp) || math.IsInf(temp, 0) {
		a.NotNumber++
	}
	negative := gas.Mass <= 0 || temp < 150
	for k := range gas.Of {
		now.Of[k] += gas.Of[k]
		negative = negative || gas.Of[k] < -1e-12*gas.Mass
	}
	if negative {
		a.Negative++
	}
}

func apart(want, got, size float64) float64 { return math.Abs(want-got) / size }

// String is one line for a log.
func (a Audit) String() string {
	say := func(x float64) string { return strconv.FormatFloat(x, 'g', 2, 64) }
	return strconv.Itoa(a.Runs) + " houses: mass " + say(a.Mass) + ", enthalpy " + say(a.Enthalpy) + ", species " + say(a.Species) +
		", volume steady " + say(a.Steady) + ", worst " + say(a.Volume) + ", negative " + strconv.Itoa(a.Negative) + ", not a number " + strconv.Itoa(a.NotNumber)
}
