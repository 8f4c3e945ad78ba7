package zone

import (
	"lintel/engine/internal/num"
)

const (
	// charredWood and hotWood: bare wood gives off gas between these surface
	// temperatures, kelvin: char fronts lie at about 300 °C (from memory, to be
	// confirmed).
	charredWood = 553.0
	hotWood     = 653.0

	// charShade is the kg/m² of gas given off at which the char has halved the
	// rate: about 2 mm of a 500 kg/m³ board. Chosen by us.
	charShade = 0.8

	// woodShare bounds how much of the heat that reaches wood turns it to gas;
	// the rest warms it. Chosen by us.
	woodShare = 0.5
)

// burnWalls lets wooden faces give off gas into the layer they touch. The heat
// of it is taken from the face.
func (m *Model) burnWalls(r *Room, dt float64) {
	if r.wood == nil {
		return
	}
	for i := range r.Faces {
		face := &r.Faces[i]
		glow := num.Smooth(face.Surface(), charredWood, hotWood)
		flux := face.flux
		if glow == 0 || flux <= 0 {
			face.Hot -= float64(float64(dt*face.Hot) / warmS)
		} else {
			want := woodShare * glow * flux / (r.wood.GasificationMJKg * 1e6 * (1 + face.Char/charShade))
			face.Hot += float64(float64(dt*(want-face.Hot)) / warmS)
		}
		m.wallGas(r, i, face, dt)
	}
}

func (m *Model) wallGas(r *Room, i int, face *Face, dt float64) {
	wet := num.Clamp(r.Wet/(0.1*(r.Area+1e-9)), 0, 1)
	flux := face.Hot * (1 - wet)
	if flux < 1e-7 {
		return
	}
	rate := float64(flux * face.Area)
	face.Char += float64(flux * dt)
	face.gained -= float64(flux * dt * r.wood.GasificationMJKg * 1e6)
	var gas Layer
	// The flame of a package stands elsewhere: only flame in the layer itself
	// takes the tar of the walls.
	tar := r.wood.TarYield * tarLeft(r.Flame)
	wood := Fire{Kind: *r.wood}
	wood.fill(&gas, rate, tar)
	gas.Heat = float64(rate * dryHeat(gasTemp))
	m.feed(r, Upper, &gas, dt)
}
