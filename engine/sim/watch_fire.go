package sim

import (
	"math"

	"lintel/engine"
	"lintel/engine/truth"
	"lintel/engine/zone"
)

// lookFire: the fire as a whole going out and growing again. It must have been a
// fire, down for a while or until an opening fed it, and then stand well above where it had fallen to.
func (w *watch) lookFire(r *Run, s truth.State) {
	least := float64(0.005 * s.FlashoverKW)
	w.tide.follow(s.HRRKW, w.share(s), s.TS, 2*least)
	w.seen = s.TS
	level := w.tide.level
	if w.out || w.falling {
		w.trough = math.Min(w.trough, level)
	}
	down := s.TS-w.fell > float64(w.pace*holdS)
	again := level > float64(3*w.trough)+float64(4*least) && level > 0.3*w.peak
	switch {
	case w.out && (down || w.answers(s)) && level > 4*least, w.falling && !w.out && again:
		w.out, w.falling, w.peak = false, false, level
		answer := w.answers(s) && w.regrew < w.opened
		if down || answer {
			w.regrew = s.TS
			w.say(r, Regrowth, w.place, w.regrown(r, s))
		}
	case !w.out && w.peak > 4*least && level < 0.5*least && level < 0.02*w.peak:
		if !w.falling {
			w.fell = s.TS
		}
		w.out, w.trough = true, level
		w.say(r, Extinction, w.place, w.why(r, s))
	case !w.falling && !w.out && level < 0.4*w.peak && w.peak > 4*least:
		w.falling, w.trough, w.fell = true, level, s.TS
	}
	w.peak = math.Max(w.peak, level)
}

func (w *watch) regrown(r *Run, s truth.State) string {
	change := engine.Sentence(causeGrew, engine.Slot("from", whole(w.trough)), engine.Slot("to", whole(w.tide.level)))
	if w.answers(s) {
		return engine.Sentences(w.cause(r, s), change)
	}
	return engine.Sentences(change, layerLit(&r.model.Rooms[w.place]))
}

// layerLit names a fire that grew again because the gas below its ceiling lit by
// itself, with no opening to blame: more of it burns there than at its fuel. Trade
// texts say auto-ignition of the fire gases; nothing where it was not that.
func layerLit(room *zone.Room) string {
	if room.Out.LayerW < 0.5*room.Out.BurnW {
		return ""
	}
	return gasLit(room)
}

// why is what put the fire out.
func (w *watch) why(r *Run, s truth.State) string {
	layers := &r.model.Rooms[w.place].Gas
	lower, upper := layers[zone.Lower].OxygenMoles(), layers[zone.Upper].OxygenMoles()
	switch {
	case s.WaterL > 0 && lower > flameOxygen:
		return engine.Sentence(causeWater, litres(s.WaterL))
	case lower < flameOxygen:
		return engine.Sentence(causeLower, fraction("oxygen", 100*lower))
	case s.OxygenLimited:
		return engine.Sentence(causeUpper, fraction("oxygen", 100*upper))
	case onlyBurners(r.model):
		return causeBurner
	}
	return causeSpent
}

// onlyBurners reports whether nothing but gas burners stands in the building.
func onlyBurners(m *zone.Model) bool {
	for i := range m.Fires {
		if !m.Fires[i].Burner {
			return false
		}
	}
	return len(m.Fires) > 0
}
