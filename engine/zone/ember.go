package zone

import (
	"math"

	"lintel/engine/internal/num"
)

const (
	// flameUpS: the time constant with which a flame comes back from an ember or
	// pilot. dousedS: with which it dies under water. Both chosen by us.
	flameUpS = 2.0
	dousedS  = 2.0

	// flameDownS: with which it dies of want of air in a room of a metre; in a
	// taller one by the square root of the height (Froude). Burners behind a shut
	// door of 2.4 m rooms died over tens of seconds: their pressure fell to some
	// pascals below none and not to tens (fsri_compartment_closed; chosen by us with
	// the mean of these in view).
	flameDownS = 5.2

	// deadFlame is the flame below which nothing grows again by itself: an ember,
	// a pilot or hot gas has to light it anew. Chosen by us.
	deadFlame = 0.002

	// emberS: embers build up under flame in this time; they die in the first
	// of the two lives in air and in the second where oxygen is short. Chosen by us.
	emberS      = 10.0
	emberAirS   = 600.0
	emberShortS = 90.0

	// burnerOutS: a gas burner has no ember; a burner that has gone out stays out
	// unless its air comes back within moments. Chosen by us.
	burnerOutS = 10.0
)

// tend moves the fire's flame and ember by one step, in a room of some height.
func (f *Fire) tend(air airAt, height, dt float64) {
	if !f.lit {
		return
	}
	fed := f.Burner || f.Left() > 1e-6*f.Mass0
	// A strong flame holds until well into the limit and then goes out; a weak one
	// needs better air to grow than to hold on (chosen by us).
	weak := 1 - f.Flame
	lives := num.Smooth(air.lives, 0.2+float64(0.35*weak), 0.8+float64(0.15*weak))
	f.Lives = lives
	if !fed {
		lives = 0
	}
	slow := flameDownS * math.Sqrt(height)
	seed := float64(0.01 * f.glow() * lives)
	grow := float64(float64(num.Max(0, f.Flame-deadFlame)*(1-f.Flame)*lives)/flameUpS) + float64(seed*(1-f.Flame))
	die := float64(float64(f.Flame*(1-lives))/slow) + float64(float64(f.Flame*f.wet())/dousedS)
	f.Flame = num.Clamp(f.Flame+float64(dt*(grow-die)), 0, 1)
	f.glowOn(air, lives, fed, dt)
}

// glowOn moves the ember: charring fuel builds up a full one under flame, melting
// fuel a quarter; without fuel it is gone in half a minute (chosen by us).
func (f *Fire) glowOn(air airAt, lives float64, fed bool, dt float64) {
	most := 0.25
	if f.Kind.CharFraction > 0 || f.Burner {
		most = 1
	}
	life := num.Lerp(emberShortS, emberAirS, num.Smooth(air.moles, 0.08, 0.16))
	if f.Burner {
		life = num.Lerp(burnerOutS, emberAirS, num.Smooth(lives, 0.5, 1))
	}
	f.Ember += float64(dt * (float64(f.Flame*num.Max(0, most-f.Ember))/emberS - f.Ember/life))
	cools := float64(f.wet() / dousedS)
	if !fed {
		cools += 1.0 / 30
	}
	f.Ember -= float64(dt * f.Ember * cools)
}

// glow is how well the ember lights gas: not at all once it is nearly dead.
func (f *Fire) glow() float64 { return f.Ember * num.Smooth(f.Ember, 0.02, 0.15) }
