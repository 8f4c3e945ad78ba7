package zone

import (
	"lintel/engine"
	"lintel/engine/internal/num"
)

// back is what lies behind a part of a face instead of the open air: a face of
// another room, lining on lining.
type back struct {
	room, face int
	weight     float64 // of its outermost temperature in what the face feels behind it
}

// layFloors joins the ceiling of each room with the ground of the rooms that stand
// on it, so that a fire warms the floor of the storey above. Rooms whose place on
// the plan is not given lie over each other where a hole joins them.
func (m *Model) layFloors(sc engine.Scenario) {
	for low := range sc.Compartments {
		for high := range sc.Compartments {
			if shared := overlap(&sc, low, high); shared > 0 {
				m.joinFloor(low, high, shared)
			}
		}
	}
	for i := range m.Rooms {
		for _, face := range [...]int{Ceiling, Ground} {
			m.Rooms[i].Faces[face].weighBacks()
		}
	}
}

// overlap is the m² of floor that one room has over another; 0 for none.
func overlap(sc *engine.Scenario, low, high int) float64 {
	a, b := &sc.Compartments[low], &sc.Compartments[high]
	gap := b.FloorM - a.FloorM - a.HeightM
	if low == high || gap < -touches || gap > thickFloor {
		return 0
	}
	if a.XM == nil || a.YM == nil || b.XM == nil || b.YM == nil {
		for _, o := range sc.Openings {
			if o.Kind.Horizontal() && (o.From == a.ID && o.To == b.ID || o.From == b.ID && o.To == a.ID) {
				return num.Min(a.WidthM*a.DepthM, b.WidthM*b.DepthM)
			}
		}
		return 0
	}
	wide := num.Min(*a.XM+a.WidthM, *b.XM+b.WidthM) - num.Max(*a.XM, *b.XM)
	deep := num.Min(*a.YM+a.DepthM, *b.YM+b.DepthM) - num.Max(*a.YM, *b.YM)
	return num.Max(0, wide) * num.Max(0, deep)
}

// touches and thickFloor: how far apart a ceiling and the floor on it may be, m,
// as a scenario may have them.
const (
	touches    = 0.001
	thickFloor = 0.7
)

func (m *Model) joinFloor(low, high int, shared float64) {
	ceiling, ground := &m.Rooms[low].Faces[Ceiling], &m.Rooms[high].Faces[Ground]
	through := 1 / (ceiling.half + ground.half)
	ceiling.backs = append(ceiling.backs, back{room: high, face: Ground, weight: through * shared / ceiling.Area})
	ground.backs = append(ground.backs, back{room: low, face: Ceiling, weight: through * shared / ground.Area})
	ceiling.open -= shared / ceiling.Area
	ground.open -= shared / ground.Area
}

// weighBacks sets how well the outermost cell is joined to all that is behind it.
func (f *Face) weighBacks() {
	whole := num.Max(0, f.open) / (f.half + 1/outerFilm)
	for _, b := range f.backs {
		whole += b.weight
	}
	for i := range f.backs {
		f.backs[i].weight /= whole
	}
	f.between[cells-1] = whole
}

// behind is the temperature that a face feels at its back.
func (m *Model) behind(f *Face) float64 {
	temp := m.Ambient
	for _, b := range f.backs {
		temp += float64(b.weight * (m.Rooms[b.room].Faces[b.face].Temp[cells-1] - m.Ambient))
	}
	return temp
}
