package zone

import "math"

// Hash folds every number of the state into 64 bits (FNV-1a), to compare runs
// bit by bit.
func (m *Model) Hash() uint64 {
	h := digest(14695981039346656037)
	h.add(m.Time)
	for i := range m.Rooms {
		r := &m.Rooms[i]
		h.add(r.Pressure, r.slip, r.Flame, r.Spray, r.Wet, r.lasting[Lower], r.lasting[Upper])
		for layer := range r.Gas {
			h.add(r.Gas[layer].Mass, r.Gas[layer].Heat)
			h.add(r.Gas[layer].Of[:]...)
		}
		for k := range r.Faces {
			h.add(r.Faces[k].Temp[:]...)
			h.add(r.Faces[k].Char)
		}
	}
	for i := range m.Vents {
		v := &m.Vents[i]
		h.add(v.fails.hot, v.fails.charred, v.Open, v.Outside, v.Flow.TotalOut(), v.Flow.TotalIn(), v.Exchange.Up, v.Exchange.Down)
	}
	for i := range m.Fires {
		f := &m.Fires[i]
		h.add(f.Mass, f.Water, f.Spread, f.Flame, f.Ember, f.Hot, f.Warm)
	}
	return uint64(h)
}

type digest uint64

func (h *digest) add(numbers ...float64) {
	for _, x := range numbers {
		bits := math.Float64bits(x)
		for range 8 {
			*h = (*h ^ digest(bits&255)) * 1099511628211
			bits >>= 8
		}
	}
}
