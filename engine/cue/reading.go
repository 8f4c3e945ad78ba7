package cue

import (
	"math"

	"lintel/engine"
)

// Reading writes a rating down as a person would: the ratings of one opening,
// with the frame they belong to. Nothing in it tells more than can be seen.
func (r *Rating) Reading(o *engine.Opening, open float64) engine.Reading {
	reading := engine.Reading{
		ID:       o.ID,
		Side:     o.Side,
		Kind:     o.Kind.Seen(),
		State:    State(open),
		Flow:     r.Flow,
		Volume:   ptr(r.Volume),
		Velocity: ptr(r.Velocity),
		Density:  ptr(r.Density),
		Darkness: ptr(r.Darkness),
		Colour:   r.Colour,
		Churning: ptr(r.Churning),
		Pulsing:  ptr(r.Pulsing),
		Vanishes: ptr(r.Vanishes),
		Flame:    r.Flame,
	}
	if o.WidthM > 0 && o.HeightM > 0 {
		reading.WidthM, reading.HeightM = ptr(o.WidthM), ptr(o.HeightM)
	}
	if !math.IsNaN(r.NeutralPlane) {
		reading.NeutralPlane = ptr(r.NeutralPlane)
	}
	return reading
}

// fullyOpen and fullyShut are the shares of opening that a person across the
// street would call open and closed (chosen by us).
const (
	fullyOpen = 0.9
	fullyShut = 0.02
)

// State is how an opening stands, from the share of it that is open.
func State(open float64) engine.OpeningState {
	switch {
	case open >= fullyOpen:
		return engine.StateOpen
	case open <= fullyShut:
		return engine.StateClosed
	}
	return engine.StatePart
}

func ptr[T any](v T) *T { return &v }
