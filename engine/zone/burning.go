package zone

import (
	"math"

	"lintel/engine/internal/num"
)

// airAt is the gas that a fire breathes.
type airAt struct {
	moles  float64    // oxygen, mole fraction
	lower  float64    // kg/s entrained from the lower layer
	upper  float64    // kg/s of the upper layer that flames inside it meet
	lives  float64    // 0 to 1, whether flame lives in it
	oxygen [2]float64 // kg/s to be had from each
}

// breath is the oxygen of what is breathed as a share of that of clean air.
func (a *airAt) breath() float64 { return num.Clamp(a.moles/0.2095, 0, 1) }

// freshShare is how far the flame breathes the incoming stream itself where the
// draught is strong, rather than the mixed layer. Chosen by us.
const freshShare = 0.6

// burnFires lets every fire give gas and burn it in its plume.
func (m *Model) burnFires(dt float64) {
	for i := range m.Fires {
		f := &m.Fires[i]
		if !f.lit && m.Time >= f.Ignite {
			f.light()
		}
		m.burnFire(f, dt)
	}
}

func (m *Model) burnFire(f *Fire, dt float64) {
	r := &m.Rooms[f.Room]
	air := m.breathe(f, r, dt)
	f.tend(air, r.Height, dt)
	gas := m.offers(f, air, dt)
	f.BurnW, f.Starved = 0, 0
	if gas.Mass <= 0 {
		return
	}
	r.now.pilot = num.Max(r.now.pilot, num.Max(f.Flame, float64(0.05*f.glow())))
	need := gas.Of[FuelHeat] / OxygenHeat
	burn := lesser((air.oxygen[Lower] + air.oxygen[Upper]) / floor(need, 1e-12))
	f.Starved = 1 - burn
	if !f.Burner { // a burner's gas is cut back with its flame already
		burn *= f.Flame
	}
	r.move(Lower, air.lower)
	m.feed(r, Upper, &gas, dt)
	m.plumeBurns(f, r, air, &gas, burn, dt)
}

// plumeBurns burns a share of the fire's gas with the oxygen that it entrained.
func (m *Model) plumeBurns(f *Fire, r *Room, air airAt, gas *Layer, burn, dt float64) {
	whole := air.oxygen[Lower] + air.oxygen[Upper]
	if whole <= 0 || burn <= 0 {
		return
	}
	need := float64(gas.Of[FuelHeat] / OxygenHeat * burn)
	up := &r.rate[Upper]
	var used Layer
	takeFuel(&used, gas, burn)
	for _, i := range fuelSpecies {
		up.Of[i] -= used.Of[i]
	}
	up.Of[Oxygen] -= need // the entrained part was moved up just before
	r.now.oxygenLeft[Upper] -= need * air.oxygen[Upper] / whole
	m.Books.Out.Of[Oxygen] += float64(dt * need)
	m.leave(r, &used, f.Starved, dt)
	watts := float64(OxygenHeat * need)
	f.BurnW = watts
	shine := float64(f.Kind.RadiantFraction * watts)
	m.release(r, watts, dt)
	r.rate[Upper].Heat -= shine
	m.Books.Lost += float64(dt * shine)
	r.now.flameW += shine
}

// breathe works out what the fire's plume entrains and what oxygen is in it.
func (m *Model) breathe(f *Fire, r *Room, dt float64) airAt {
	var air airAt
	f.power += float64(memory(dt) * (f.BurnW - f.power))
	power := num.Max(f.power, float64(f.Gas*HeatCap*300))
	if power < 50 && f.lit {
		power = 50
	}
	plume := Plume{
		ConvectiveW: (1 - f.Kind.RadiantFraction) * power, TotalW: power,
		DiameterM: f.Diameter, Faces: f.Faces, Ambient: r.now.temp[Lower],
	}
	height := num.Max(0, r.Interface()-f.Base)
	if power > 0 {
		shape := plume.shape()
		drawn := shape.entrained(height)
		air.lower = drawn * plume.draught(r.draught, math.Sqrt(r.Area), height)
		air.lower = num.Min(air.lower, 0.4*r.budget(Lower))
		if reach := num.Min(shape.flame, r.Height-f.Base); reach > height {
			air.upper = num.Max(0, shape.entrained(reach)-drawn)
		}
	}
	air.upper += float64(0.02 * r.Gas[Upper].Mass) // wisps about the flame tip
	m.mixBreath(f, r, &air)
	return air
}

// mixBreath finds the oxygen of what is breathed. Where fresh air streams in,
// the flame breathes part of it before it mixes with the layer.
func (m *Model) mixBreath(f *Fire, r *Room, air *airAt) {
	fresh := num.Clamp(r.inflow*m.density/floor(air.lower, 1e-9), 0, 1) * freshShare
	lowMoles := num.Lerp(r.now.oxygen[Lower], num.Max(r.now.oxygen[Lower], r.fresh), fresh)
	lowTemp := r.now.temp[Lower]
	lowLives := breathes(lowMoles, lowTemp)
	highLives := breathes(r.now.oxygen[Upper], r.now.temp[Upper])
	air.oxygen[Lower] = air.lower * r.Gas[Lower].Fraction(Oxygen) * lowLives
	air.oxygen[Upper] = num.Min(air.upper*r.Gas[Upper].Fraction(Oxygen), 0.5*r.now.oxygenLeft[Upper]) * highLives
	low := float64(air.lower * lowMoles)
	high := float64(air.upper * r.now.oxygen[Upper])
	flow := air.lower + air.upper
	air.moles = (low + high) / floor(flow, 1e-12)
	air.lives = (float64(low*lowLives) + float64(high*highLives)) / floor(low+high, 1e-12)
}
