package sim

import (
	"math"

	"lintel/engine/truth"
	"lintel/engine/zone"
)

// observe follows stage, events and pulsing.
func (r *Run) observe() {
	state := r.state()
	r.stage = r.tracker.Observe(state)
	r.watch.look(r, state)
	for i := range r.pulses {
		v := &r.model.Vents[i]
		out, in := r.through(i)
		// Noise: a hundredth of what the frame could pass at 1 m/s.
		noise := 0.01 * r.frameArea(i) * math.Max(v.Open, 0.01)
		r.pulsing[i] = r.pulses[i].Observe(lookEvery*zone.StepS, out-in, noise)
	}
}

// state maps the fire to what the truth of its stage looks at.
func (r *Run) state() truth.State {
	m := r.model
	seat := r.watch.seat(m)
	s := truth.State{
		TS: r.TimeS(), HRRKW: m.HRR / 1000, WaterL: r.water,
		FlashoverKW:    flashoverKW(m, seat),
		LayerInOpening: layerInOpening(m, seat),
		FuelLeft:       m.FuelLeft(),
		UpperC:         m.Rooms[seat].Gas[zone.Upper].Temp() - zone.Kelvin,
	}
	for i := range m.Rooms {
		room := &m.Rooms[i]
		if room.Out.BurnW > 0.05*m.HRR || i == seat {
			s.UpperC = math.Max(s.UpperC, room.Gas[zone.Upper].Temp()-zone.Kelvin)
		}
		s.FloorFlux = math.Max(s.FloorFlux, room.Out.FloorFlux/1000)
	}
	s.OxygenLimited = wantsAir(m, seat, s)
	return s
}

// flameOxygen is the mole fraction of oxygen in the lower layer below which a fire
// that is out is taken to be out for want of air: by experiment a room's fire
// stopped when its lower layer held about 15 per cent (NIST and NRC tests; CFAST's
// lower limit of 15 per cent by mass is 13.6 by volume).
const flameOxygen = 0.15

// wantsAir reports whether air is what the fire is short of. One that went out
// without water wants for it while fuel is left and its room is vitiated, however
// well an ember glows there; one that has nothing left to burn wants for nothing.
func wantsAir(m *zone.Model, seat int, s truth.State) bool {
	if s.HRRKW > float64(truth.NoiseShare*s.FlashoverKW) {
		return m.Short()
	}
	choked := s.WaterL == 0 && m.Rooms[seat].Gas[zone.Lower].OxygenMoles() < flameOxygen
	return s.FuelLeft && (choked || m.Short())
}

// flashoverKW is Thomas' estimate of the power that flashes a room over, 7.8 A_T
// + 378 A√H (PD 7974-1:2019 eq. 29), over its openings as they stand. A room
// that is all but shut has the first term alone.
func flashoverKW(m *zone.Model, room int) float64 {
	walls, openings := 0.0, 0.0
	for i := range m.Rooms[room].Faces {
		walls += m.Rooms[room].Faces[i].Area
	}
	for i := range m.Vents {
		v := &m.Vents[i]
		if v.A != room && v.B != room || v.Crack {
			continue
		}
		if v.Horizontal {
			area := v.Hole.Area * v.Open
			openings += float64(area * math.Sqrt(math.Sqrt(area)))
			continue
		}
		height := v.Slot.Head - v.Slot.Sill
		openings += float64(v.Slot.Width * height * v.Open * math.Sqrt(height))
	}
	return float64(7.8*walls) + float64(378*openings)
}

// layerInOpening reports whether the room's smoke layer hangs below the top of
// an opening out of it.
func layerInOpening(m *zone.Model, room int) bool {
	r := &m.Rooms[room]
	if !r.Layered() {
		return false
	}
	for i := range m.Vents {
		v := &m.Vents[i]
		if v.A != room && v.B != room || v.Crack || v.Open < 0.02 {
			continue
		}
		if v.Horizontal || r.Floor+r.Interface() < v.Slot.Head {
			return true
		}
	}
	return false
}

// through is kg/s out of and into the room From of an opening.
func (r *Run) through(i int) (out, in float64) {
	v := &r.model.Vents[i]
	switch {
	case !v.Horizontal:
		return v.Flow.TotalOut(), v.Flow.TotalIn()
	case v.AboveIsB:
		return v.Exchange.Up, v.Exchange.Down
	}
	return v.Exchange.Down, v.Exchange.Up
}

func (r *Run) frameArea(i int) float64 {
	v := &r.model.Vents[i]
	if v.Horizontal {
		return v.Hole.Area
	}
	return v.Slot.Width * (v.Slot.Head - v.Slot.Sill)
}
