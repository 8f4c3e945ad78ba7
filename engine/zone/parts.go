package zone

import (
	"math"

	"lintel/engine/internal/num"
)

const (
	// sweptOut is the share of a layer that may leave it in one part of a step. Where
	// more leaves, its heat and fuel would be those of another gas from one step to
	// the next, and flame in it would flutter between them. overFull is the share of
	// its volume by which a room may be wrong after one. mostParts bounds the parts,
	// which grow at once and fall when calmSteps of fewer have gone by: to and fro
	// would itself be flutter. All chosen by us.
	sweptOut  = 0.25
	overFull  = 3e-4
	mostParts = 4
	calmSteps = 20
)

// divide settles in how many parts the next step of dt is taken.
func (m *Model) divide(dt float64) {
	needed := m.partsNeeded(dt)
	switch {
	case needed >= m.parts:
		m.parts, m.calm = needed, 0
	case m.calm < calmSteps:
		m.calm++
	default:
		m.parts, m.calm = m.parts/2, 0
	}
}

// partsNeeded is the power of two of parts in which the last step would have kept
// within bounds.
func (m *Model) partsNeeded(dt float64) int {
	need := 0.0
	for i := range m.Rooms {
		r := &m.Rooms[i]
		need = num.Max(need, num.Max(r.swept(dt)/sweptOut, math.Abs(r.over)/overFull))
	}
	parts := 1
	for parts < mostParts && need > float64(parts) {
		parts *= 2
	}
	return parts
}

// swept is the largest share of a layer that would leave it in dt.
func (r *Room) swept(dt float64) float64 {
	most := 0.0
	for layer, drawn := range r.now.drawn {
		most = num.Max(most, float64(dt*drawn)/r.Gas[layer].Mass)
	}
	return most
}
