package sim

import "math"

// spell is a stretch of time through which something holds. It ends once what
// keeps it up has been gone for the hold, so that a swing about a threshold is
// one event and not ten.
type spell struct {
	on   bool
	last float64 // when it last held
}

// begins reports whether a new spell begins now.
func (s *spell) begins(enters, keeps bool, now, hold float64) bool {
	if s.on {
		switch {
		case keeps || enters:
			s.last = now
			return false
		case now-s.last < hold:
			return false
		}
		s.on = false
	}
	if enters {
		s.on, s.last = true, now
	}
	return enters
}

// The turns of the fire's level, averaged over a few seconds. It turns down once
// it has lost a fifth of its peak and up once it has gained a quarter on its
// trough, as engine/truth has it.
const (
	turnDown = 0.80
	turnUp   = 1.25
)

// tide follows the level of the fire as a whole.
type tide struct {
	level    float64 // kW, averaged
	peak     float64
	trough   float64
	troughAt float64
	falling  bool
}

// follow takes the next heat release; share is dt over dt and the averaging time.
func (t *tide) follow(kW, share, now, noise float64) {
	t.level += float64((kW - t.level) * share)
	if !t.falling {
		t.peak = math.Max(t.peak, t.level)
		if t.level < float64(turnDown*t.peak) && t.peak > noise {
			t.falling, t.trough, t.troughAt = true, t.level, now
		}
		return
	}
	if t.level <= t.trough {
		t.trough, t.troughAt = t.level, now
	}
	if t.level > float64(turnUp*t.trough)+noise {
		t.falling, t.peak = false, t.level
	}
}
