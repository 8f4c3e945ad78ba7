package sim

import (
	"lintel/engine"
	"lintel/engine/zone"
)

// OpeningFailed is the kind of event of a pane that fell out or a leaf that burned
// through.
const OpeningFailed = "opening_failed"

// lookOpenings notes openings that gave way to heat. For what the fire does then they
// count as opened.
func (w *watch) lookOpenings(r *Run) {
	for i := range w.failed {
		v := &r.model.Vents[i]
		if !v.Failed || w.failed[i] {
			continue
		}
		w.failed[i] = true
		how := causeGlass
		if v.BurnedThrough() {
			how = causeThrough
		}
		w.say(r, OpeningFailed, v.A, engine.Sentence(how, degrees("t", r.model.Against(i)-zone.Kelvin), r.opening(i)))
		r.changes = append(r.changes, change{at: r.TimeS(), opening: i, share: 1})
		w.moved(r, i, true)
	}
}
