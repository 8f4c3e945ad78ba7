package zone

import (
	"math"

	"lintel/engine/internal/num"
)

const (
	// sootAbsorb turns soot concentration into absorption: 3.72·C0/C2·fv·T with
	// fv the volume fraction at 1,800 kg/m³ comes to about 0.7 m² of absorption a
	// gram at 1,000 K (from memory, to be confirmed).
	sootAbsorb = 700.0 // m²/kg at 1000 K

	// gasGrey is the emissivity of water vapour and carbon dioxide in a metre of gas
	// that has used all its oxygen; it grows as the root of path and of what was
	// used, up to gasGreyMost (Hottel's charts: 0.5 at 0.5 atm m and 0.2 at a tenth
	// of it, 600 to 1,000 K; from memory, to be confirmed).
	gasGrey     = 0.36
	gasGreyMost = 0.6

	// wallGrey is the emissivity of smoked walls. Usual value 0.9.
	wallGrey = 0.9

	// stillFilm and strongFilm: convection h = strong·ΔT^(1/3), at least still,
	// W/(m² K): turbulent free convection 0.12 Ra^(1/3) (CFAST Tech. Ref.) gives
	// 1.5. The jets of a fire room along its ceiling and walls are forced, 10 to 30
	// W/(m² K) near the plume against 8 to 10 by that formula (from memory, to be
	// confirmed); 3.2 stands for the mean over the faces. Chosen by us with the
	// means of the corridor suite, the small box and the closed house in view
	// (nbs_multiroom, nist_vent_study, ul_nij_ranch), all too hot with 2.2.
	stillFilm  = 4.0
	strongFilm = 3.2
)

// greyness is the emissivity of the upper layer over the mean beam length 3.6 V/A
// of its shape: that of its gas and, 1 - e^(-κL), of the smoke in it.
func (r *Room) greyness() float64 {
	gas := &r.Gas[Upper]
	volume := r.now.volume[Upper]
	deep := volume / r.Area
	surface := float64(2*r.Area) + float64(2*(r.Width+r.Depth)*deep)
	beam := 3.6 * volume / surface
	used := num.Max(0, 1-gas.Of[Oxygen]/float64(airOxygen*gas.Mass))
	absorb := float64(sootAbsorb*r.now.temp[Upper]/1000) * (gas.Of[Soot] + float64(0.3*gas.Of[Tar])) / volume
	clear := 1 - num.Min(gasGreyMost, float64(gasGrey*math.Sqrt(used*beam)))
	return 1 - float64(clear*num.Exp(-num.Min(absorb*beam, 20)))
}

// loseToWalls takes heat from the layers into the faces for one step, by
// convection from the layer that each face touches and by radiation from the
// upper layer, from hot faces to the ground and from flames.
func (m *Model) loseToWalls(r *Room, flameW, dt float64) {
	now := &r.now
	high := num.Clamp((1-now.share)/0.5, 0, 1)  // of the high wall band in the upper layer
	low := num.Clamp((0.5-now.share)/0.5, 0, 1) // of the low band
	touch := [faceCount]float64{r.now.plug, high, low, 1 - r.now.sink}
	film := &r.film
	glow := float64(Boltzmann * fourth(num.Min(now.temp[Upper], hottest)))
	spare := r.spare(&touch, dt)
	var walls, takenHigh, takenLow float64
	for i := range r.Faces {
		face := &r.Faces[i]
		surface := face.Surface()
		if part := touch[i]; part > 0 {
			up := float64(part * film[Upper] * (now.temp[Upper] - surface))
			if i == HighWall || i == LowWall {
				walls += float64(spare[Upper] * up * face.Area)
			}
			takenHigh += float64(num.Max(0, up) * face.Area)
			own := float64(Boltzmann * fourth(surface))
			seen := float64(r.grey * wallGrey * part * (glow - own))
			m.give(r, face, float64(spare[Upper]*(up+seen)), Upper, dt)
		}
		if part := 1 - touch[i]; part > 0 {
			down := float64(part * film[Lower] * (now.temp[Lower] - surface))
			takenLow += float64(num.Max(0, down) * face.Area)
			m.give(r, face, float64(spare[Lower]*down), Lower, dt)
		}
	}
	r.sink(walls)
	m.deposit(r, Upper, spare[Upper]*takenHigh, dt)
	m.deposit(r, Lower, spare[Lower]*takenLow, dt)
	m.shineDown(r, glow, spare[Upper], &touch, dt)
	m.shineFlames(r, flameW, dt)
}

// feel refreshes the convection along the faces and the greyness of the smoke,
// each in every fourth step: they change slowly.
func (r *Room) feel(step int) {
	turn := step % 4
	if turn == 0 || step == 0 {
		r.film[Upper] = convects(r.now.temp[Upper] - r.Faces[Ceiling].Surface())
	}
	if turn == 1 || step == 0 {
		r.film[Lower] = convects(r.now.temp[Lower] - r.Faces[LowWall].Surface())
	}
	if turn == 2 || step == 0 {
		r.grey = r.greyness()
	}
}

// convects is the heat transfer of gas along a face, W/(m² K).
func convects(gap float64) float64 {
	gap = math.Abs(gap)
	if gap < stillGap {
		return stillFilm
	}
	return strongFilm * num.Cbrt(gap)
}

// stillGap is the difference in K up to which the air is as good as still.
const stillGap = (stillFilm / strongFilm) * (stillFilm / strongFilm) * (stillFilm / strongFilm)

// spare holds back what a thin layer gives to the walls, so that it cannot give
// more in a step than it has: 1 unless a layer would lose half of its excess
// temperature in one step.
func (r *Room) spare(touch *[faceCount]float64, dt float64) [2]float64 {
	temp := num.Min(r.now.temp[Upper], hottest)
	radiant := float64(4 * Boltzmann * r.grey * temp * temp * temp)
	high := 0.0
	for i := range r.Faces {
		high += float64(touch[i] * r.Faces[i].Area)
	}
	eases := [2]float64{
		Lower: (r.inside - high) * r.film[Lower],
		Upper: float64(high*(r.film[Upper]+radiant)) + float64(r.Area*radiant),
	}
	for layer := range eases {
		share := dt * eases[layer] / float64(r.now.capacity[layer]*r.Gas[layer].Mass)
		eases[layer] = num.Min(1, 0.5/floor(share, 0.5))
	}
	return eases
}

// give moves a flux in W/m² from a layer to a face.
func (m *Model) give(r *Room, face *Face, flux float64, layer int, dt float64) {
	face.warm(flux, dt)
	watts := float64(flux * face.Area)
	r.rate[layer].Heat -= watts
	m.Books.Lost += float64(dt * watts)
}

// shineDown carries radiation through the interface: from the upper layer, and
// through it from the ceiling, onto the ground and the wall below it.
func (m *Model) shineDown(r *Room, glow, spare float64, touch *[faceCount]float64, dt float64) {
	ground, ceiling := &r.Faces[Ground], &r.Faces[Ceiling]
	lowest := fourth(ground.Surface())
	ceilingGlow := float64(Boltzmann * fourth(ceiling.Surface()))
	dim := 1 - r.grey
	bare := float64((1 - touch[HighWall]) * r.Faces[HighWall].Area)
	bare += float64((1 - touch[LowWall]) * r.Faces[LowWall].Area)
	// Of what crosses the interface, the ground gets the share of its area.
	toGround := r.Area / (r.Area + float64(0.5*bare))
	below := wallGrey * r.Area * r.now.sink
	layer := float64(spare * r.grey * (glow - float64(Boltzmann*lowest)) * below)
	direct := float64(dim * wallGrey * (ceilingGlow - float64(Boltzmann*lowest)) * below)
	ground.warm((float64(layer*toGround)+direct)/r.Area, dt)
	wall := &r.Faces[LowWall]
	wall.warm(layer*(1-toGround)/wall.Area, dt)
	ceiling.warm(-direct/ceiling.Area, dt)
	r.rate[Upper].Heat -= layer
	m.Books.Lost += float64(dt * layer)
	cold := float64(Boltzmann * fourth(m.Ambient))
	r.Out.FloorFlux = float64(r.grey*glow) + float64(dim*ceilingGlow) - cold
}

// shineFlames spreads the radiation of flames over the faces; what the smoke
// absorbs has stayed in the layer already.
func (m *Model) shineFlames(r *Room, flameW, dt float64) {
	if flameW <= 0 {
		return
	}
	caught := float64(0.5 * r.grey * (1 - r.now.share))
	r.rate[Upper].Heat += float64(caught * flameW)
	m.Books.Lost -= float64(dt * caught * flameW)
	left := float64((1 - caught) * flameW)
	flux := left / r.inside
	for i := range r.Faces {
		r.Faces[i].warm(flux, dt)
	}
	r.Out.FloorFlux += flux
}
