package cue

import (
	"math"

	"lintel/engine"
)

// flow names the direction and says how far the answer stands from another.
func (s *Scales) flow(m Measures) (engine.Flow, float64) {
	still := apart(m.Through, s.Still)
	if m.Through < s.Still {
		return engine.FlowNone, still
	}
	sure := math.Min(still, apart(m.Minor, s.OneWay))
	switch {
	case m.Minor >= s.OneWay:
		return engine.FlowBoth, sure
	case m.Outward:
		return engine.FlowOut, sure
	}
	return engine.FlowIn, sure
}

// flame names how much flame shows.
func (s *Scales) flame(strength float64) engine.FlameSeen {
	switch {
	case strength >= s.FlameFull:
		return engine.FlameFull
	case strength >= s.Tongues:
		return engine.FlameTongues
	}
	return engine.FlameNone
}

// colour names the hue. The level of darkness sets the grey. A tint is named
// only in the pale greys: white hides it at a distance and soot drowns it. Tar
// with little soot looks yellowish, with more soot brown.
func (s *Scales) colour(level int, darkness, tint float64) engine.Colour {
	switch level {
	case 0, 1:
		return engine.White
	case 2:
		switch {
		case tint >= s.Yellow:
			return engine.YellowGrey
		case tint >= s.Brown:
			return engine.Brown
		}
		return engine.LightGrey
	case 3:
		if darkness < s.middle() {
			return engine.Grey
		}
		return engine.DarkGrey
	}
	return engine.Black
}

// middle halves the third level of darkness, which the scale calls mid to dark
// grey, into the two hues that people name there.
func (s *Scales) middle() float64 {
	cuts := s.Darkness.Cuts
	return float64(0.5 * (cuts[len(cuts)-2] + cuts[len(cuts)-1]))
}

// churning is the Froude number of the outflow band, v/√(g·h). Where buoyancy
// alone drives the flow it equals C·√(2(Tg/Ta − 1)), a measure of the heat
// behind the opening wherever the neutral plane sits; wind, expansion or a tall
// shaft add to it.
func (p *Physical) churning() float64 {
	band := p.band()
	if band <= 0 {
		return 0
	}
	return p.TopVelocityMS / math.Sqrt(float64(gravity*band))
}

// reynolds is v·d/ν of the outflow, d being its thickness. Viscosity is Sutherland's formula for air
// (coefficients of the US Standard Atmosphere 1976; from memory, to be confirmed).
func (p *Physical) reynolds() float64 {
	t := kelvin(p.OutTempC)
	viscosity := float64(1.458e-6*t) * math.Sqrt(t) / (t + 110.4)
	return float64(airDensity(p.OutTempC)*p.OutVelocityMS) * p.thickness() / viscosity
}

// thickness is the lesser side of the outflow, which sets how large its eddies
// grow: a crack is as thick as it is wide.
func (p *Physical) thickness() float64 {
	if p.Kind.Horizontal() || p.HeightM <= 0 {
		return p.band()
	}
	return math.Min(p.band(), p.OpenM2/p.HeightM)
}

// band is the height of the outflow.
func (p *Physical) band() float64 {
	if p.Kind.Horizontal() {
		return math.Sqrt(p.OpenM2)
	}
	return p.OutBandM
}
