package zone

import (
	"math"

	"lintel/engine/internal/num"
)

const (
	// seepPa is the pressure at which a leak passes what an opening of its area
	// would: leakage areas of houses are given at 10 Pa (so the two houses of UL
	// and NIJ) or at 4 Pa.
	seepPa = 10.0

	// leastSeepPa and mostSeepPa are the pressures between which the law holds,
	// about those at which buildings are tested.
	leastSeepPa = 0.1
	mostSeepPa  = 100.0
)

// seep sets how wide the cracks are to gas at the pressures of the last step, each
// crack in every fourth step.
//
// A crack is long and narrow: flow in it is between that of an opening, which
// grows with the root of the pressure, and slow flow, which grows with the
// pressure. Fan tests of houses give the power 0.65 on average (Sherman and
// Dickerhoff, LBL-35700, from memory, to be confirmed; so too the leakage area of
// the Modelica Buildings library); 2/3 is taken here, whose roots are cheap. As an
// area it is
//
//	A = A(10 Pa) (|Δp| / 10 Pa)^(n - 1/2)
//
// which is how FDS writes it (LEAK_AREA with a pressure exponent).
func (m *Model) seep() {
	for i := m.turns % 4; i < len(m.Vents); i += 4 {
		v := &m.Vents[i]
		if !v.seeps {
			continue
		}
		a, b := &m.Rooms[v.A].now.column, m.columnOf(v)
		low := math.Abs(a.Over(v.Slot.Sill) - b.Over(v.Slot.Sill))
		high := math.Abs(a.Over(v.Slot.Head) - b.Over(v.Slot.Head))
		over := num.Clamp(float64(0.5*(low+high)), leastSeepPa, mostSeepPa)
		v.seep = math.Sqrt(num.Cbrt(over / seepPa))
	}
}
