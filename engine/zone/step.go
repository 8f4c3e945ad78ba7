package zone

import (
	"lintel/engine/internal/num"
)

// StepS is the fixed time step that the model is meant for, s. Chosen by us: a
// box of 0.6 m and a house are both stable at it, and halving it changes little
// (see the tests).
const StepS = 0.05

// film is the least share of a room's volume that a layer keeps. Chosen by us.
const film = 0.004

// Step moves the building on by dt seconds, at most 0.1: at once or, where a thin
// layer is swept out faster than that, in a few parts. It allocates nothing.
func (m *Model) Step(dt float64) {
	part := dt / float64(m.parts)
	for range m.parts {
		m.begin(part)
		m.solvePressures(part)
		m.finish(part)
	}
	m.divide(dt)
	m.Steps++
}

// begin works out all heat and gas released in the step.
func (m *Model) begin(dt float64) {
	m.swing(dt)
	m.look(dt)
	m.seep()
	m.wear(dt)
	m.burnFires(dt)
	m.burnJets(dt)
	m.burnLayers(dt)
	m.shineOut(dt)
	for i := range m.Rooms {
		r := &m.Rooms[i]
		m.loseToWalls(r, r.now.flameW, dt)
		m.burnWalls(r, dt)
		m.douse(r, i, dt)
		r.overturn()
		r.swell = r.swells(dt)
	}
}

// finish carries the flows and moves the layers.
func (m *Model) finish(dt float64) {
	m.carry(dt)
	m.HRR = 0
	for i := range m.Rooms {
		r := &m.Rooms[i]
		m.clear(r, dt)
		for layer := range r.Gas {
			r.Gas[layer].gain(&r.rate[layer], dt)
		}
		m.slips(i, r.settle(), dt)
		m.HRR += r.Out.BurnW
	}
	for i := range m.Rooms {
		face := &m.Rooms[i].Faces[m.turns%faceCount]
		face.conduct(faceCount*dt, m.behind(face))
	}
	for i := range m.Vents {
		m.HRR += m.Vents[i].OutsideW
	}
	m.turns++
	m.Time += dt
}

// swing moves the openings toward where they were set.
func (m *Model) swing(dt float64) {
	for i := range m.Vents {
		v := &m.Vents[i]
		if v.Open == v.target {
			continue
		}
		most := float64(v.speed * dt)
		v.Open += num.Clamp(v.target-v.Open, -most, most)
	}
}

// settle keeps each layer at least a film thick, with gas of the other, and returns
// the volume of both.
func (r *Room) settle() float64 {
	r.measure()
	volume := &r.next.volume
	least := float64(film * r.Volume)
	if volume[Lower] >= least && volume[Upper] >= least {
		return volume[Lower] + volume[Upper]
	}
	for layer := range r.Gas {
		gas, other := &r.Gas[layer], &r.Gas[1-layer]
		short := least - gas.Volume()
		if short <= 0 {
			continue
		}
		amount := num.Min(float64(short*Density)/other.Temp(), 0.5*other.Mass)
		stream := other.part(amount)
		other.gain(&stream, -1)
		gas.gain(&stream, 1)
		for i := range gas.Of {
			gas.Of[i] = num.Max(gas.Of[i], 0)
		}
	}
	r.measure()
	return volume[Lower] + volume[Upper]
}

const (
	// turnS: how fast a lower layer that is hotter than the upper rises through
	// it. blurS: how fast two layers of one temperature mix; sharp layers do not.
	// Both chosen by us.
	turnS = 2.0
	blurS = 30.0
)

// overturn moves gas between the layers where nothing holds them apart.
func (r *Room) overturn() {
	gap := r.now.temp[Upper] - r.now.temp[Lower]
	if gap < 0 {
		r.move(Lower, r.Gas[Lower].Mass*num.Smooth(-gap, 0, 10)/turnS)
	}
	blur := 1 - num.Smooth(gap, 1, 6)
	if blur > 0 {
		least := num.Min(r.Gas[Lower].Mass, r.Gas[Upper].Mass)
		amount := float64(blur*least) / blurS
		r.move(Lower, amount)
		r.move(Upper, amount)
	}
}
