package zone

import (
	"lintel/engine/internal/num"
)

const (
	// sprayS is how long droplets stay in the air. Chosen by us.
	sprayS = 1.5

	// wallsShare of the water that does not turn to steam in the gas wets fuel
	// and walls; the rest runs off. Chosen by us.
	wettingShare = 0.6
)

// spray puts litres of water into the air of a room.
func (r *Room) spray(litres float64) { r.Spray += litres }

// douse turns droplets into steam in the hot layer and wets fuel and walls with
// the rest.
func (m *Model) douse(r *Room, room int, dt float64) {
	if r.Spray <= 1e-9 && r.Wet <= 1e-9 {
		return
	}
	fallen := r.Spray / sprayS
	hot := num.Smooth(r.now.temp[Upper], boiling, boiling+150)
	steam := float64(fallen * hot * (1 - r.now.share))
	spare := r.Gas[Upper].Mass * r.now.capacity[Upper] * num.Max(0, r.now.temp[Upper]-boiling)
	steam = num.Min(steam, 0.2*spare/(steamHeat*dt))
	r.Spray = num.Max(0, r.Spray-float64(fallen*dt))
	m.steam(r, steam, steam*steamHeat, dt)
	rest := float64((fallen - steam) * dt * wettingShare)
	m.wet(r, room, rest)
	m.dryWalls(r, dt)
}

// steam adds vapour and takes the heat that made it from the upper layer.
func (m *Model) steam(r *Room, amount, heat, dt float64) {
	if amount <= 0 {
		return
	}
	vapour := Layer{Mass: amount, Heat: amount * vapourHeat(boiling)}
	vapour.Of[Water] = amount
	m.feed(r, Upper, &vapour, dt)
	r.rate[Upper].Heat -= heat
	m.Books.Lost += float64(heat * dt)
}

// wet spreads water over the fires of a room, half of it, and its walls.
func (m *Model) wet(r *Room, room int, litres float64) {
	fires := 0.0
	for i := range m.Fires {
		if m.Fires[i].Room == room && !m.Fires[i].Burner {
			fires++
		}
	}
	if fires == 0 {
		r.Wet += litres
		return
	}
	r.Wet += float64(0.5 * litres)
	for i := range m.Fires {
		f := &m.Fires[i]
		if f.Room == room && !f.Burner {
			f.Water += float64(0.5*litres) / fires
		}
	}
}

// dryWalls lets hot walls turn the water on them to steam.
func (m *Model) dryWalls(r *Room, dt float64) {
	for i := range r.Faces {
		face := &r.Faces[i]
		if r.Wet <= 1e-9 || face.Temp[0] <= boiling {
			continue
		}
		spare := float64(face.capacity[0]*(face.Temp[0]-boiling)) * face.Area
		amount := num.Min(0.1*spare/(steamHeat*dt), r.Wet/(8*dt))
		r.Wet -= float64(amount * dt)
		face.gained -= float64(amount*steamHeat*dt) / face.Area
		m.steam(r, amount, 0, dt)
	}
}
