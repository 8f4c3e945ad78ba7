// Package truth names the stage and regime that a fire is really in. It sees
// only the state of the fire and its history, never a cue, so that a reading
// can be held against it. Undetermined is a reader's answer and never a truth.
//
// The stages are those of the trade; the thresholds that part them are chosen
// by us from published criteria named beside each. A later change of one is its
// own commit, with every figure measured again.
package truth

import "lintel/engine"

const (
	// IncipientShare of the flashover estimate: below it, and with no layer in
	// the opening, a fire is incipient. Chosen by us.
	IncipientShare = 0.05

	// PreFlashoverC and PreFlashoverFlux mark a room on its way to flashover.
	// Chosen by us: half the floor flux of the usual criterion, and the layer
	// temperature that goes with it for a black layer (about 350 C).
	PreFlashoverC    = 350.0
	PreFlashoverFlux = 10.0 // kW/m2

	// FlashoverC lies inside the 500 to 600 C of PD 7974-1 and CIBSE Guide E;
	// FlashoverFlux is the usual 20 kW/m2 at the floor (from memory, to be
	// confirmed). A fire that has met either stays fully developed until both
	// have fallen below the lower pair, so that it does not chatter.
	FlashoverC        = 550.0
	FlashoverFlux     = 20.0
	FlashoverKeepC    = 480.0
	FlashoverKeepFlux = 14.0

	// SustainedShare of the peak: above it a fire that met the criteria is
	// still burning as one. Chosen by us.
	SustainedShare = 0.5

	// KnockDownShare of the heat release before water: below it a fire is
	// knocked down; above RegrowthShare it has grown again. Chosen by us.
	KnockDownShare = 0.10
	RegrowthShare  = 0.30

	// WaterLastsS is how long after the last water a fall still counts as its doing,
	// chosen by us; WaterHeat is what a litre takes up on its way to steam, kJ (from
	// 20 to 100 C 335, latent heat 2,257; steam tables).
	WaterLastsS = 60.0
	WaterHeat   = 2592.0
)

// State is one instant of a fire, as the truth needs it.
type State struct {
	TS             float64
	HRRKW          float64 // all burning inside and at the openings
	FlashoverKW    float64 // estimate for the seat's compartment as it stands
	LayerInOpening bool    // the seat's smoke layer hangs below the top of an opening out of it
	UpperC         float64 // hottest upper layer with fire in it
	FloorFlux      float64 // kW/m2, highest at a floor
	OxygenLimited  bool    // it burns less than its fuel gas would with plenty of air
	FuelLeft       bool    // solid fuel or fuel gas enough to burn on
	WaterL         float64 // put in so far
}

// Tracker follows one fire from its first instant. The zero Tracker is ready.
type Tracker struct {
	swing     swing
	starved   lag
	knock     knockDown
	developed bool
	started   bool
	last      float64
}

// Observe takes the next instant (TS must not fall) and returns the stage.
func (t *Tracker) Observe(s State) engine.Stage {
	dt := s.TS - t.last
	if !t.started {
		dt, t.started = 0, true
	}
	t.last = s.TS
	t.starved.follow(share(s.OxygenLimited), dt)
	t.swing.follow(s.HRRKW, dt, s.FlashoverKW)
	t.knock.follow(s, t.swing.level.value)
	t.developed = t.fullyDeveloped(s)
	return t.stage(s)
}

// Regime is what sets the fire's size, over the last seconds.
func (t *Tracker) Regime() engine.Regime {
	if t.starved.value > 0.5 {
		return engine.VentilationLimited
	}
	return engine.FuelLimited
}

func (t *Tracker) stage(s State) engine.Stage {
	switch {
	case t.knock.down:
		return engine.AfterKnockDown
	case t.developed:
		return engine.FullyDeveloped
	case t.swing.falling && t.Regime() == engine.VentilationLimited && s.FuelLeft:
		return engine.VentilationDecay
	case t.swing.falling:
		return engine.Decay
	case s.UpperC >= PreFlashoverC || s.FloorFlux >= PreFlashoverFlux:
		return engine.PreFlashover
	case t.swing.level.value < IncipientShare*s.FlashoverKW && !s.LayerInOpening:
		return engine.Incipient
	}
	return engine.Growth
}

func (t *Tracker) fullyDeveloped(s State) bool {
	if t.swing.level.value < SustainedShare*t.swing.peak {
		return false
	}
	if t.developed {
		return s.UpperC >= FlashoverKeepC || s.FloorFlux >= FlashoverKeepFlux
	}
	return s.UpperC >= FlashoverC || s.FloorFlux >= FlashoverFlux
}

func share(b bool) float64 {
	if b {
		return 1
	}
	return 0
}
