package cue

import "math"

// Pulse counts how often the flow at an opening turns round, which is how
// pulsing shows at a crack or a door. It holds one opening's memory and is fed
// once a step. The zero value is ready.
type Pulse struct {
	side float64 // −1 in, +1 out, 0 not known yet
	rate float64 // reversals a minute, fading
}

// pulseMemory is how long a reversal is remembered, in seconds: about as long
// as an observer stands at one opening (common practice, no source).
const pulseMemory = 20.0

// Observe takes the next dt seconds. net is the outflow minus the inflow and
// noise the size under which it is taken as still, both in kg/s. It returns
// reversals a minute.
func (p *Pulse) Observe(dt, net, noise float64) float64 {
	p.rate -= float64(p.rate * math.Min(1, dt/pulseMemory))
	side := p.side
	switch {
	case net > noise:
		side = 1
	case net < -noise:
		side = -1
	}
	if side*p.side < 0 {
		p.rate += 60 / pulseMemory
	}
	p.side = side
	return p.rate
}
