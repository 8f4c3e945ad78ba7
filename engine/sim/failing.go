package sim

import (
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
		how := ": its glass fell out, gas of "
		if v.BurnedThrough() {
			how = ": burned through, gas of "
		}
		w.say(r, OpeningFailed, v.A, r.scenario.Openings[i].ID+how+whole(r.model.Against(i)-zone.Kelvin)+" °C against it")
		r.changes = append(r.changes, change{at: r.TimeS(), opening: i, share: 1})
		w.moved(r, i, true)
	}
}
