package zone

import "lintel/engine"

// shutShare is the share of an opening that still leaks when it is shut: a closed
// door or window leaks through 0.5 to 1 per cent of its area (0.01 m² for a door
// of 2 m²; from memory, to be confirmed), and a loose hatch or port the same. A
// leak that is shut is gone.
const shutShare = 0.005

func newVent(o engine.Opening, index map[string]int, rooms []engine.Compartment) Vent {
	v := Vent{A: index[o.From], B: index[o.To], Horizontal: o.Kind.Horizontal(), Side: o.Side, shut: shutShare}
	if o.Kind == engine.Leak {
		v.shut, v.seeps, v.seep = 0, true, 1
	}
	v.Open = valueOr(o.Open, 0)
	v.target = v.Open
	v.fails = newFailure(o.Fails)
	from := rooms[v.A]
	if !v.Horizontal {
		sill := from.FloorM + o.SillM
		v.Slot = Slot{Sill: sill, Head: sill + o.HeightM, Width: o.WidthM}
		return v
	}
	v.AboveIsB = true
	v.Hole = Hole{Height: from.FloorM + from.HeightM, Area: o.AreaM2, Square: o.Shape != "round"}
	if v.B != OutsideRoom && rooms[v.B].FloorM < from.FloorM {
		v.AboveIsB = false
		v.Hole.Height = from.FloorM
	}
	return v
}

// crackHeight is the share of a room's height over which its cracks lie, from the
// floor up: sole plates, thresholds and window frames leak more than the upper
// wall. Set by the mean pressures of two closed houses (UL/NIJ), where the plane
// of no pressure lay near the floor of one storey and between the floors of two.
const crackHeight = 0.5

// newCrack is the leakage of a room: a slot up from its floor to the open air,
// which feels no wind.
func newCrack(c engine.Compartment, room int) Vent {
	walls := 2 * (c.WidthM + c.DepthM) * c.HeightM
	area := valueOr(c.LeakM2, usualLeak*walls)
	return Vent{
		A: room, B: OutsideRoom, Crack: true, Open: 1, target: 1, seeps: true, seep: 1,
		Slot: Slot{Sill: c.FloorM, Head: c.FloorM + float64(crackHeight*c.HeightM), Width: area / (crackHeight * c.HeightM)},
	}
}
