package zone

import "lintel/engine/internal/num"

// shineOut lets hot rooms radiate through vertical openings: to the open air,
// where it is lost, or onto the walls of the room beyond. An opening is a black
// hole of its own area: it shows the smoke of the upper layer over the height to
// which that comes down and, past the smoke, the walls. After flashover this is a
// tenth to a fifth of the fire's heat.
func (m *Model) shineOut(dt float64) {
	for i := range m.Vents {
		v := &m.Vents[i]
		if v.Horizontal || v.Crack {
			continue
		}
		m.shineFrom(v, v.A, v.B, dt)
		if v.B != OutsideRoom {
			m.shineFrom(v, v.B, v.A, dt)
		}
	}
}

func (m *Model) shineFrom(v *Vent, from, to int, dt float64) {
	r := &m.Rooms[from]
	if r.now.temp[Upper] < m.Ambient+shinesAbove {
		return
	}
	beyond := m.Ambient
	if to != OutsideRoom {
		beyond = m.Rooms[to].Faces[HighWall].Surface()
	}
	width := v.Slot.Width * v.free()
	high := num.Max(0, v.Slot.Head-num.Max(v.Slot.Sill, r.now.column.Interface))
	smoke := float64(r.grey * high * width)
	watts := m.shineSmoke(r, smoke, beyond, dt)
	if r.Faces[HighWall].Surface() > beyond+shinesAbove {
		past := float64((v.Slot.Head-v.Slot.Sill)*width) - smoke
		watts += r.shineWalls(past, beyond, dt)
	}
	if to != OutsideRoom {
		m.Rooms[to].receive(watts, dt)
	}
}

// shineSmoke takes from the upper layer what so many m² of it shine at something
// of a temperature, and returns it in W.
func (m *Model) shineSmoke(r *Room, area, beyond, dt float64) float64 {
	glow := Boltzmann * (fourth(num.Min(r.now.temp[Upper], hottest)) - fourth(beyond))
	watts := area * num.Max(0, glow)
	// A thin layer gives no more than a tenth of what it has in a step.
	spare := float64(0.1*r.Gas[Upper].Heat) / dt * (1 - m.Ambient/r.now.temp[Upper])
	watts = num.Min(watts, spare)
	r.rate[Upper].Heat -= watts
	m.Books.Lost += float64(dt * watts)
	return watts
}

// shineWalls takes from the faces of a room what they shine past the smoke through
// so many m², each by its share of them all, and returns it in W.
func (r *Room) shineWalls(area, beyond, dt float64) float64 {
	share := area / r.inside
	cold := fourth(beyond)
	watts := 0.0
	for i := range r.Faces {
		face := &r.Faces[i]
		flux := float64(share * Boltzmann * (fourth(face.Surface()) - cold))
		face.warm(-flux, dt)
		watts += float64(flux * face.Area)
	}
	return watts
}

// receive spreads radiation from next door over the faces of a room.
func (r *Room) receive(watts, dt float64) {
	flux := watts / r.inside
	for i := range r.Faces {
		r.Faces[i].warm(flux, dt)
	}
}

// shinesAbove is the excess temperature below which radiation through openings is
// left out, K: it is then under a hundredth of the convection. Chosen by us.
const shinesAbove = 60.0
