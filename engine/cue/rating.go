package cue

import (
	"math"

	"lintel/engine"
)

// Rating is everything a careful person would say of one opening. Colour is
// empty where no smoke is seen; NeutralPlane is NaN where there is none.
type Rating struct {
	Flow         engine.Flow
	Volume       int
	Velocity     int
	Density      int
	Darkness     int
	Colour       engine.Colour
	Churning     bool
	Pulsing      bool
	Vanishes     bool
	Flame        engine.FlameSeen
	NeutralPlane float64
	Measures     Measures
	Margins      Margins
}

// Margins says how far each rating stands from changing: the smallest share by
// which its measure could be wrong and give another answer. A rating near 0 is
// not fair to ask about.
type Margins struct {
	Flow     float64
	Volume   float64
	Velocity float64
	Density  float64
	Darkness float64
}

// Of returns the margin of one cue: 1 for a cue that has none.
func (m *Margins) Of(c engine.Cue) float64 {
	switch c {
	case engine.CueFlow:
		return m.Flow
	case engine.CueVolume:
		return m.Volume
	case engine.CueVelocity:
		return m.Velocity
	case engine.CueDensity:
		return m.Density
	case engine.CueDarkness:
		return m.Darkness
	}
	return 1
}

// Rate rates one opening. before is the rating of the same opening a moment
// ago, for steadiness, or nil where there is none: a drill's truth is rated
// with nil, so that it depends on the moment alone.
func Rate(p *Physical, s *Scales, before *Rating) Rating {
	was := Rating{Volume: fresh, Velocity: fresh, Density: fresh, Darkness: fresh}
	if before != nil {
		was = *before
	}
	m := p.Measure()
	r := Rating{Measures: m, NeutralPlane: math.NaN()}
	r.Flow, r.Margins.Flow = s.flow(m)
	r.Flame = s.flame(m.Flame)
	r.Pulsing = p.Pulsing >= s.Pulsing
	if r.Flow == engine.FlowBoth && !p.Kind.Horizontal() {
		r.NeutralPlane = p.NeutralPlane
	}
	r.rateSmoke(p, s, &was)
	return r
}

// rateSmoke rates what is only there to be rated where smoke is seen. Density
// alone decides that: each other margin is then no wider than that first step.
func (r *Rating) rateSmoke(p *Physical, s *Scales, was *Rating) {
	m := &r.Measures
	r.Margins.Density = s.Density.margin(m.Density)
	seen := apart(m.Density, s.Density.Cuts[0])
	density := s.Density.level(m.Density, was.Density)
	if density == 0 || r.Flow == engine.FlowIn {
		if r.Flow == engine.FlowIn {
			r.Margins.Density, seen = r.Margins.Flow, r.Margins.Flow
		}
		r.Margins.Volume, r.Margins.Velocity, r.Margins.Darkness = seen, seen, seen
		return
	}
	r.Density = density
	r.Volume = s.Volume.level(m.Volume, was.Volume)
	r.Velocity = s.Velocity.level(m.Velocity, was.Velocity)
	r.Darkness = s.Darkness.level(m.Darkness, was.Darkness)
	r.Margins.Volume = math.Min(seen, s.Volume.margin(m.Volume))
	r.Margins.Velocity = math.Min(seen, s.Velocity.margin(m.Velocity))
	r.Margins.Darkness = math.Min(seen, s.Darkness.margin(m.Darkness))
	r.Colour = s.colour(r.Darkness, m.Darkness, p.Tint)
	r.Churning = p.reynolds() >= s.Reynolds && m.Churning >= s.Churning
	r.Vanishes = p.Steam >= s.Vanishes
}

// Rolls is how much the smoke churns as it shows: the measure, but under the cut
// where the jet is too small to break up whatever drives it (see Scales.Reynolds),
// so that a picture drawn from it and the rating agree.
func (p *Physical) Rolls(s *Scales) float64 {
	measure := p.churning()
	if re := p.reynolds(); re < s.Reynolds {
		return math.Min(measure, float64(s.Churning*re)/s.Reynolds)
	}
	return measure
}
