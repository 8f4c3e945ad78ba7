package cue

import (
	"math"

	"lintel/engine"
)

// gravity in m/s² (standard value, exact by definition).
const gravity = 9.80665

// Physical is the state of one opening in plain numbers, seen from outside:
// in is toward the building, out is away from it. It is what the fire and the
// optics give. Frame values describe the whole opening, however much of it
// stands open.
type Physical struct {
	Kind        engine.OpeningKind
	FrameM2     float64 // area of the whole frame
	OpenM2      float64 // area that stands open now, cracks included
	HeightM     float64 // of the frame; 0 for a horizontal opening
	SillM       float64 // above the floor of From
	RoomHeightM float64 // of the room behind, which is what a crack is seen against

	InKgS         float64 // toward From
	OutKgS        float64
	OutM3S        float64 // volume flow of the outflow, at its own temperature
	OutBandM      float64 // height of the outflow band; 0 for a horizontal opening
	OutVelocityMS float64 // mean over the outflow
	TopVelocityMS float64 // fastest, at the top of the band
	OutTempC      float64
	AmbientC      float64

	ExtinctionM  float64 // of the outflow, 1/m
	OpticalDepth float64 // through the outflow
	Lightness    float64 // 0 black to 1 white
	Tint         float64 // 0 neutral to 1 brown
	Steam        float64 // share of the extinction that is water, 0 to 1

	Pulsing      float64 // reversals a minute, from Pulse
	FlameKW      float64 // burning that shows in or outside the opening
	NeutralPlane float64 // fraction of the frame's height from its sill, NaN where there is none
}

// Measures are the dimensionless numbers that the scales cut.
type Measures struct {
	Volume   float64
	Velocity float64
	Density  float64
	Darkness float64
	Churning float64
	Flame    float64 // kW/m^(5/2)
	Through  float64 // mass flow both ways over the opening's own capacity
	Minor    float64 // share of the weaker of in and out, 0 to 0.5
	Outward  bool    // out is the stronger
}

// Measure works out the numbers that the scales cut.
func (p *Physical) Measure() Measures {
	height, area := p.span()
	root := math.Sqrt(float64(gravity * height))
	m := Measures{
		Density:  p.OpticalDepth,
		Darkness: 1 - p.Lightness,
		Churning: p.churning(),
		Outward:  p.OutKgS > p.InKgS,
	}
	if area > 0 {
		// A^¾ as √A·√√A keeps the bits alike everywhere: no power function.
		size := float64(math.Sqrt(area) * math.Sqrt(math.Sqrt(area)))
		m.Volume = float64(p.ExtinctionM*p.OutM3S) / float64(math.Sqrt(gravity)*size)
		m.Flame = p.FlameKW / float64(area*math.Sqrt(height))
	}
	if root > 0 {
		m.Velocity = p.OutVelocityMS / root
	}
	m.Through, m.Minor = p.exchange(root)
	return m
}

// shutShare is the share of a frame under which only its cracks are open
// (chosen by us; doors leak less than a hundredth of their area).
const shutShare = 0.02

// Cracked reports whether smoke can only pass by cracks.
func (p *Physical) Cracked() bool {
	return p.Kind == engine.Leak || p.OpenM2 < shutShare*p.FrameM2
}

// span is the height and area against which an eye sets what it sees: those of
// the frame. A crack looks fast at little pressure and has no height of its own,
// so its speed is set against the room behind it; a leak has no frame either. A
// horizontal opening has no height, so its width stands in.
func (p *Physical) span() (height, area float64) {
	height, area = p.HeightM, p.FrameM2
	if p.Kind.Horizontal() {
		height = math.Sqrt(p.FrameM2)
	}
	if p.Cracked() {
		height = math.Max(height, p.RoomHeightM)
	}
	if p.Kind == engine.Leak {
		area = float64(p.RoomHeightM * p.RoomHeightM)
	}
	return height, area
}

// exchange is the flow both ways as a share of ρ·A·√(gH), which an opening
// roughly carries when it runs at its limit, and the share of the weaker side.
func (p *Physical) exchange(root float64) (through, minor float64) {
	total := p.InKgS + p.OutKgS
	if total <= 0 {
		return 0, 0
	}
	capacity := float64(airDensity(p.AmbientC) * p.OpenM2 * root)
	if capacity > 0 {
		through = total / capacity
	}
	return through, math.Min(p.InKgS, p.OutKgS) / total
}

// airDensity in kg/m³ at atmospheric pressure: ideal gas, 353 kg·K/m³
// (101,325 Pa over 287 J/kg/K).
func airDensity(tempC float64) float64 { return 353 / kelvin(tempC) }

// kelvin converts degrees Celsius.
func kelvin(tempC float64) float64 { return tempC + 273.15 }
