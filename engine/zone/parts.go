package zone

import "lintel/engine/internal/num"

const (
	// sweptOut is the share of a layer that may leave it in one part of a step. Where
	// more leaves, its heat and fuel would be those of another gas from one step to
	// the next, and flame in it would flutter between them. mostParts bounds the
	// parts. Both chosen by us.
	sweptOut  = 0.25
	mostParts = 4
)

// partsOf is in how many parts the next step of dt is taken: so many that no layer
// is swept out faster than it may, and never less than half as many as in this step.
func (m *Model) partsOf(dt float64) int {
	swept := 0.0
	for i := range m.Rooms {
		swept = num.Max(swept, m.Rooms[i].swept(dt))
	}
	parts := 1
	for parts < mostParts && swept > float64(sweptOut*float64(parts)) {
		parts *= 2
	}
	return max(parts, m.parts/2)
}

// swept is the largest share of a layer that would leave it in dt.
func (r *Room) swept(dt float64) float64 {
	most := 0.0
	for layer, drawn := range r.now.drawn {
		most = num.Max(most, float64(dt*drawn)/r.Gas[layer].Mass)
	}
	return most
}
