package zone

import (
	"math"

	"lintel/engine/internal/num"
)

const (
	// litShare is the most of a package's surface that burns when it is lit, and
	// litArea the most m²: a match lights a handful of straw, not a sofa. Chosen
	// by us.
	litShare = 0.04
	litArea  = 0.06

	// glowFlux is the radiation at which a hot solid surface loses what it
	// gains: σ·(350 °C)⁴ is 8.5 kW/m². Below it nothing is given off by radiation
	// alone. catchFlux lights a package where there is flame, in the smoke or of
	// another fire of the room, which under so hot a layer runs along the ceiling:
	// the piloted ignition flux of wood is 10 to 13 kW/m², and 20 on the floor mean
	// flashover because they light what lies there (from memory, to be confirmed).
	glowFlux  = 8.5e3
	catchFlux = 12e3

	// hazeFlux is the radiation that heats wood to 230 °C, where it begins to
	// discolour and give off pale vapour (180 to 250 °C; from memory, to be
	// confirmed): σ·(230 °C)⁴ is 3.6 kW/m². Up to glowFlux hazeShare of the heat
	// makes gas (chosen by us), and a package need not be lit for it.
	hazeFlux  = 3.6e3
	hazeShare = 0.05

	// warmS and coolS: how fast the rate of gas follows the heat it gets, up and
	// down; a burning surface keeps on giving gas off for some seconds. Chosen
	// by us.
	warmS = 4.0
	coolS = 12.0

	// smoulderFlux is given off by glowing embers, kg/(s m²) (smouldering of
	// cellulosic beds, 0.5 to 2 g/(s m²); from memory, to be confirmed).
	smoulderFlux = 0.0012

	// spotS is how long a surface that has gone out stays hot enough to be aflame at
	// once as a whole. Chosen by us: with less a shut house that is opened after
	// minutes no longer surges, without it a shut one flashes over again by itself.
	spotS = 180.0

	steamHeat = 2.26e6 // J/kg, water at 100 °C
	boiling   = 373.15
	gasTemp   = 620.0 // kelvin, at which fuel gas leaves a solid (350 °C)
)

// shrinks is the share of the first surface left on a package as it is used up:
// the two-thirds power of its mass, as for a shape that keeps its form.
func (f *Fire) shrinks() float64 {
	if f.Mass0 <= 0 {
		return 0
	}
	left := num.Clamp((f.Mass-f.residue())/floor(f.Mass0-f.residue(), 1e-9), 0, 1)
	return num.Cbrt(left * left)
}

func (f *Fire) residue() float64 { return float64(f.Kind.CharFraction * f.Mass0) }

// Left is the kg that can still turn to gas.
func (f *Fire) Left() float64 {
	if f.Burner {
		return math.Inf(1)
	}
	return num.Max(0, f.Mass-f.residue())
}

// Lit reports whether the fire has been lit, or has caught.
func (f *Fire) Lit() bool { return f.lit }

// light starts a fire by hand.
func (f *Fire) light() {
	f.lit = true
	f.Flame = num.Max(f.Flame, 0.3)
	f.Spread = num.Max(f.Spread, f.kindled())
}

// kindled is the share of a package's surface that burns when it is lit.
func (f *Fire) kindled() float64 {
	return num.Min(litShare, litArea/floor(f.Kind.AreaM2PerKg*f.Mass0, 1e-9))
}

// offers is the fuel gas of a fire in this step, as a stream, and its water.
func (m *Model) offers(f *Fire, air airAt, dt float64) Layer {
	var gas Layer
	if f.Burner {
		if f.lit {
			f.Gas = f.powerAt(m.Time) / (f.Kind.HeatMJKg * 1e6) * f.Flame
			f.fill(&gas, f.Gas, 0)
			gas.Heat = float64(gas.Mass * dryHeat(m.Ambient))
		}
		return gas
	}
	r := &m.Rooms[f.Room]
	flux := r.Out.FloorFlux
	f.catch(flux, num.Max(r.Flame, r.now.alight), dt)
	if f.Left() <= 0 {
		f.Gas, f.Hot, f.Warm, f.Unmade = 0, 0, 0, 0
		return gas
	}
	if f.lit {
		f.spreads(flux, dt)
	}
	f.warms(flux, air, dt)
	left := f.shrinks()
	area := f.Kind.AreaM2PerKg * f.Mass0 * f.Spread * left
	skin := f.skin * left
	if f.lit {
		skin = num.Min(area, skin)
		m.scorch(f, scorchShare*(1-f.Spread)*f.Hot*area*f.Flame*(1-f.wet()), dt)
	}
	smoulder := float64(smoulderFlux * f.Ember * num.Min(1, air.moles/0.15))
	rate := float64(area*(f.Hot+smoulder)) + float64(skin*f.Warm)
	dry := f.dries(&rate, dt)
	rate = num.Min(rate, f.Left()/(4*dt))
	f.Mass -= float64(rate * dt)
	f.Gas = rate
	f.Unmade = float64(area*f.Hot) * (1/num.Max(0.1, air.breath()) - 1)
	tar := f.Kind.TarYield * tarLeft(f.Flame*(1-f.Starved))
	f.fill(&gas, rate, tar)
	gas.Mass += dry
	gas.Of[Water] += dry
	gas.Heat = float64(rate*dryHeat(gasTemp)) + float64(dry*vapourHeat(boiling))
	return gas
}

// scorchShare: a surface just ahead of the flame gives off its first vapours,
// tar and moisture, which go by the flame and are the pale haze of a fire that
// spreads. As much as this share of the tar and moisture of the burning gas while
// there is all of the surface to spread over, and none at the end. Chosen by us:
// 4 per cent of the gas at most, as much as well-aired fires leave unburned.
const scorchShare = 0.25

// scorch lets a surface give off the tar and moisture of rate kg/s of gas.
func (m *Model) scorch(f *Fire, rate, dt float64) {
	damp := float64(rate * f.Kind.Moisture)
	rate *= f.Kind.TarYield
	rate = num.Min(rate, f.Left()/(4*dt))
	if rate <= 0 {
		return
	}
	var haze Layer
	f.fill(&haze, rate, 1)
	haze.Heat = float64(haze.Mass*dryHeat(boiling)) + float64(damp*vapourHeat(boiling))
	haze.Mass += damp
	haze.Of[Water] += damp
	f.Mass -= float64(rate * dt)
	m.feed(&m.Rooms[f.Room], Upper, &haze, dt)
}

// tarLeft is the share of tar that leaves as droplets: nearly none through a
// flame that covers the fuel and has the air to burn it (chosen by us).
func tarLeft(flame float64) float64 { return 1 - float64(0.95*num.Smooth(flame, 0.1, 0.6)) }

// fill sets a stream of fuel gas.
func (f *Fire) fill(gas *Layer, rate, tar float64) {
	k := &f.Kind
	gas.Mass = rate
	gas.Of[Fuel] = rate
	gas.Of[Tar] = rate * tar
	gas.Of[FuelHeat] = rate * k.HeatMJKg * 1e6
	gas.Of[FuelSoot] = rate * k.SootYield
	gas.Of[FuelCO] = rate * k.COYield
}

// catch lights a package that the room's radiation has heated, where there is
// flame to light it.
func (f *Fire) catch(flux, flame, dt float64) {
	if f.lit {
		return
	}
	chance := num.Smooth(flux, catchFlux, 2*catchFlux) * num.Max(flame, num.Smooth(flux, 25e3, 35e3))
	f.Spread += float64(0.02 * chance * dt)
	if f.Spread > f.kindled() {
		f.light()
	}
}

// spreads lets flame run over the package: logistic growth with the kind's own
// time, faster under radiation.
func (f *Fire) spreads(flux, dt float64) {
	push := 1 + float64(2*num.Smooth(flux, 3e3, 20e3))
	if f.Kind.GrowthS > 0 {
		f.Spread += float64(dt * f.Flame * push * f.Spread * (1 - f.Spread) / f.Kind.GrowthS)
	}
	f.Spread -= float64(dt * f.cools(flux))
	// Radiation alone makes the whole surface give gas.
	f.Spread += float64(dt * num.Smooth(flux, glowFlux, 3*glowFlux) * (1 - f.Spread) / 20)
	f.Spread = num.Min(f.Spread, 1)
}

// cools is how fast a surface that has gone out is lost to the flame, 1/s: an ember
// then lights one spot of it, from which it must spread anew.
func (f *Fire) cools(flux float64) float64 {
	out := (1 - f.Flame) * (1 - num.Smooth(flux, hazeFlux, glowFlux))
	return out * num.Max(0, f.Spread-f.kindled()) / spotS
}

// warms lets the rate of gas follow the flame's and the room's heat. The flame's
// share falls with the oxygen that it breathes (flame heat flux falls about in
// proportion to the oxygen above its limit; Tewarson, from memory).
func (f *Fire) warms(flux float64, air airAt, dt float64) {
	flame := float64(f.Kind.BurnFluxKgM2S * f.Flame * air.breath())
	room := (num.Max(0, flux-glowFlux) + float64(hazeShare*flux*num.Smooth(flux, hazeFlux, glowFlux))) / (f.Kind.GasificationMJKg * 1e6)
	// Char and ash shade the fuel as it is used up.
	used := 1 - f.Mass/f.Mass0
	room = float64(room * (1 / (1 + float64(8*f.Kind.CharFraction*used))))
	f.Hot = follow(f.Hot, flame, dt)
	f.Warm = follow(f.Warm, room, dt)
}

// follow moves a rate toward what is wanted, up and down at different speeds.
func follow(rate, want, dt float64) float64 {
	slow := coolS
	if want > rate {
		slow = warmS
	}
	return rate + float64(float64(dt*(want-rate))/slow)
}

// filmOfWater is the kg/m² of water that covers a surface whole. Chosen by us: a
// tenth of a millimetre.
const filmOfWater = 0.1

// wet is 0 to 1: how far applied water covers the package.
func (f *Fire) wet() float64 {
	return num.Clamp(f.Water/floor(filmOfWater*f.Kind.AreaM2PerKg*f.Mass0, 1e-9), 0, 1)
}

// dries spends the heat that makes gas on water first: on what was put on, before
// anything else, and on the moisture that leaves with the gas. It lowers rate and
// returns the steam, kg/s.
func (f *Fire) dries(rate *float64, dt float64) float64 {
	wet := float64(0.98 * f.wet())
	heat := float64(*rate * f.Kind.GasificationMJKg * 1e6)
	steam := num.Min(float64(wet*heat)/steamHeat, f.Water/(4*dt))
	f.Water -= float64(steam * dt)
	bound := float64(f.Kind.Moisture * steamHeat / (f.Kind.GasificationMJKg * 1e6))
	*rate *= (1 - wet) / (1 + bound)
	return steam + float64(f.Kind.Moisture**rate)
}

// powerAt is a burner's set power, W.
func (f *Fire) powerAt(t float64) float64 {
	for i := len(f.Power) - 1; i >= 0; i-- {
		if t < f.Power[i][0] {
			continue
		}
		if i == len(f.Power)-1 {
			return f.Power[i][1]
		}
		from, to := f.Power[i], f.Power[i+1]
		return num.Lerp(from[1], to[1], (t-from[0])/(to[0]-from[0]))
	}
	return 0
}
