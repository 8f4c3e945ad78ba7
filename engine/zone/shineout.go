package zone

import "lintel/engine/internal/num"

// shineOut lets hot layers radiate through vertical openings: to the open air,
// where it is lost, or onto the walls of the room beyond. An opening is a black
// hole of its own area over the height at which it shows the upper layer. After
// flashover this is a tenth to a fifth of the fire's heat.
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
	high := v.Slot.Head - num.Max(v.Slot.Sill, r.now.column.Interface)
	if high <= 0 || r.now.temp[Upper] < m.Ambient+shinesAbove {
		return
	}
	beyond := m.Ambient
	if to != OutsideRoom {
		beyond = m.Rooms[to].Faces[HighWall].Surface()
	}
	area := float64(high * v.Slot.Width * v.free())
	glow := Boltzmann * (fourth(num.Min(r.now.temp[Upper], hottest)) - fourth(beyond))
	watts := float64(r.grey * area * num.Max(0, glow))
	// A thin layer gives no more than a tenth of what it has in a step.
	spare := float64(0.1*r.Gas[Upper].Heat) / dt * (1 - m.Ambient/r.now.temp[Upper])
	watts = num.Min(watts, spare)
	r.rate[Upper].Heat -= watts
	m.Books.Lost += float64(dt * watts)
	if to != OutsideRoom {
		m.Rooms[to].receive(watts, dt)
	}
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
