package zone

import (
	"lintel/engine"
	"lintel/engine/internal/num"
)

const (
	// glassS is how long gas must stay at a pane's temperature before the glass falls
	// out, s. Chosen by us. Fallout of single panes was seen at gas temperatures of
	// about 360 to 450 °C, of double ones at about 600 °C (Babrauskas, glass breakage
	// in fires; from memory, to be confirmed); the scenario gives the temperature.
	glassS = 10.0

	// charSpeed is how fast softwood chars through from one side in a developed fire:
	// 0.65 to 0.8 mm a minute (EN 1995-1-2; from memory, to be confirmed). Char forms
	// from about 300 °C; the rate is whole from 600 °C (chosen by us).
	charSpeed          = 0.7e-3 / 60
	charsFrom, charsAt = 573.0, 873.0

	// fallS is how long what gives way takes to fall out of its frame. Chosen by us.
	fallS = 1.0
)

// failure is how an opening gives way, and how far it has.
type failure struct {
	glass, wood  float64 // kelvin, m; 0 for one that it has not
	hot, charred float64 // how far either has gone, 0 to 1
}

func newFailure(f *engine.Failure) failure {
	if f == nil {
		return failure{}
	}
	fails := failure{wood: valueOr(f.WoodMM, 0) / 1000}
	if f.GlassC != nil {
		fails.glass = *f.GlassC + Kelvin
	}
	return fails
}

// wear lets heat work on the openings that can give way.
func (m *Model) wear(dt float64) {
	for i := range m.Vents {
		v := &m.Vents[i]
		if v.Failed || v.fails.glass <= 0 && v.fails.wood <= 0 {
			continue
		}
		temp := m.Against(i)
		fails := &v.fails
		if fails.glass > 0 {
			heats := dt / glassS
			if temp < fails.glass {
				heats = -heats
			}
			fails.hot = num.Max(0, fails.hot+heats)
		}
		if fails.wood > 0 {
			fails.charred += float64(dt * charSpeed * num.Smooth(temp, charsFrom, charsAt) / fails.wood)
		}
		if num.Max(fails.hot, fails.charred) >= 1 {
			m.SetOpening(i, 1, fallS)
			v.Failed = true
		}
	}
}

// BurnedThrough reports whether a vent that failed did so by charring.
func (v *Vent) BurnedThrough() bool { return v.fails.charred >= v.fails.hot }

// Against is the temperature of the hottest gas against an opening, kelvin.
func (m *Model) Against(vent int) float64 {
	v := &m.Vents[vent]
	return num.Max(m.against(v, v.A), m.against(v, v.B))
}

// against is the temperature of the gas that a room has against an opening: that at
// the head of a vertical one, and at the ceiling or the floor of a horizontal one.
func (m *Model) against(v *Vent, room int) float64 {
	if room == OutsideRoom {
		return m.Ambient
	}
	r := &m.Rooms[room]
	high := v.Slot.Head > r.now.column.Interface
	if v.Horizontal {
		high = v.Hole.Height > r.Floor
	}
	if high {
		return r.now.temp[Upper]
	}
	return r.now.temp[Lower]
}
