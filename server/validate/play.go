package validate

import (
	"fmt"
	"math"

	"lintel/engine"
	"lintel/engine/sim"
	"lintel/engine/zone"
)

// play is a scenario that is running, with its gauges.
type play struct {
	*sim.Run
	frame    engine.Frame
	rooms    map[string]int
	openings map[string]int
}

// gauge reads one number off a running fire.
type gauge func(p *play) float64

func start(library sim.Library, sc engine.Scenario) (*play, error) {
	sc.V = 1
	run, err := sim.New(sc, library)
	if err != nil {
		return nil, fmt.Errorf("scenario %s: %w", sc.Name, err)
	}
	p := &play{Run: run, rooms: map[string]int{}, openings: map[string]int{}}
	for i, c := range sc.Compartments {
		p.rooms[c.ID] = i
	}
	for i, o := range sc.Openings {
		p.openings[o.ID] = i
	}
	return p, nil
}

// until runs on to a time.
func (p *play) until(at float64) error { return p.Advance(math.Max(0, at-p.TimeS())) }

// mean averages gauges over a span of time, read once a second.
func (p *play) mean(from, to float64, gauges ...gauge) ([]float64, error) {
	sums := make([]float64, len(gauges))
	if err := p.until(from); err != nil {
		return nil, err
	}
	n := math.Max(1, math.Round(to-from))
	for range int(n) {
		if err := p.Advance(1); err != nil {
			return nil, err
		}
		p.Frame(&p.frame)
		for i, read := range gauges {
			sums[i] += read(p) / n
		}
	}
	return sums, nil
}

func (p *play) room(id string) *zone.Room { return &p.Model().Rooms[p.rooms[id]] }

// upper is the rise of the upper layer over the air outside, K.
func upper(room string) gauge {
	return func(p *play) float64 { return p.room(room).Gas[zone.Upper].Temp() - p.Model().Ambient }
}

// lower is the same for the lower layer.
func lower(room string) gauge {
	return func(p *play) float64 { return p.room(room).Gas[zone.Lower].Temp() - p.Model().Ambient }
}

// layer is the height of the interface above the floor; where no layers are to
// be told apart, that of the room.
func layer(room string) gauge {
	return func(p *play) float64 {
		r := p.room(room)
		if !r.Layered() {
			return r.Height
		}
		return r.Interface()
	}
}

// oxygenAt is oxygen in per cent by volume at a height above the floor.
func oxygenAt(room string, height float64) gauge {
	return func(p *play) float64 { return 100 * layerAt(p.room(room), height).OxygenMoles() }
}

func layerAt(r *zone.Room, height float64) *zone.Layer {
	if height > r.Interface() {
		return &r.Gas[zone.Upper]
	}
	return &r.Gas[zone.Lower]
}

// over is the pressure over that of the air outside at the same height, Pa.
func over(room string, height float64) gauge {
	return func(p *play) float64 { return p.overAt(p.rooms[room], height) }
}

func (p *play) overAt(room int, height float64) float64 {
	if room == zone.OutsideRoom {
		return 0
	}
	r := &p.Model().Rooms[room]
	outside := zone.Density / p.Model().Ambient
	low := math.Min(height, r.Interface())
	sum := r.Pressure + zone.Gravity*(outside-zone.Density/r.Gas[zone.Lower].Temp())*low
	return sum + zone.Gravity*(outside-zone.Density/r.Gas[zone.Upper].Temp())*(height-low)
}

// speed is that of the gas in a vertical opening at a height above the floor of
// its first room, outward positive: C√(2Δp/ρ), as the read-out has it.
func speed(opening string, height float64) gauge {
	return func(p *play) float64 {
		v := &p.Model().Vents[p.openings[opening]]
		above := p.Model().Rooms[v.A].Floor + height
		from, to := v.A, v.B
		drop := p.overAt(from, height)
		if to != zone.OutsideRoom {
			drop -= p.overAt(to, above-p.Model().Rooms[to].Floor)
		}
		if drop < 0 {
			from = to
		}
		density := zone.Density / p.Model().Ambient
		if from != zone.OutsideRoom {
			r := &p.Model().Rooms[from]
			density = zone.Density / layerAt(r, above-r.Floor).Temp()
		}
		return math.Copysign(zone.FlowCoefficient*math.Sqrt(2*math.Abs(drop)/density), drop)
	}
}

// neutral is the height of the neutral plane above the floor; NaN for none.
func neutral(opening string) gauge {
	return func(p *play) float64 { return p.frame.Openings[p.openings[opening]].NeutralM }
}

func inflow(opening string) gauge {
	return func(p *play) float64 { return p.frame.Openings[p.openings[opening]].InKgS }
}

func outflow(opening string) gauge {
	return func(p *play) float64 { return p.frame.Openings[p.openings[opening]].OutKgS }
}

// power is all heat released, kW.
func power(p *play) float64 { return p.frame.Header.HRRKW }

// indoors is the heat released in one room, kW.
func indoors(room string) gauge {
	return func(p *play) float64 { return p.frame.Compartments[p.rooms[room]].HRRKW }
}
