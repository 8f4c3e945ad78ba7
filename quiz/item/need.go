package item

import (
	"slices"

	"lintel/engine"
	"lintel/engine/cue"
)

// shows reports whether the scene is about its lesson at this moment.
func (f *Family) shows(w *walk) bool {
	for _, need := range f.Need {
		if !need.met(w) {
			return false
		}
	}
	return true
}

func (n Need) met(w *walk) bool {
	if len(n.Stage) > 0 && !slices.Contains(n.Stage, w.run.Stage()) {
		return false
	}
	if len(n.Regime) > 0 && !slices.Contains(n.Regime, w.run.Regime()) {
		return false
	}
	if n.Opening == "" {
		return true
	}
	rating, err := w.rate(w.run, n.Opening)
	if err != nil {
		return false
	}
	if len(n.Flow) > 0 && !slices.Contains(n.Flow, rating.Flow) {
		return false
	}
	if n.Pulsing && !rating.Pulsing || n.Flame && rating.Flame != engine.FlameTongues && rating.Flame != engine.FlameFull {
		return false
	}
	if n.Cue == "" {
		return true
	}
	level, known := levelOf(n.Cue, &rating)
	return known && level >= n.Low && level <= n.High
}

func levelOf(c engine.Cue, r *cue.Rating) (int, bool) {
	switch c {
	case engine.CueVolume:
		return r.Volume, true
	case engine.CueVelocity:
		return r.Velocity, true
	case engine.CueDensity:
		return r.Density, true
	case engine.CueDarkness:
		return r.Darkness, true
	}
	return 0, false
}
