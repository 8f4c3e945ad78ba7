package sim

import (
	"math"

	"lintel/engine/cue"
	"lintel/engine/handcalc"
	"lintel/engine/internal/num"
	"lintel/engine/truth"
	"lintel/engine/zone"
)

// woodHeat is what a kg of wood releases as it burns, kJ (red oak 12.4 MJ/kg, SFPE
// Handbook, from memory, to be confirmed): the window flame's formula is of wood fires.
const woodHeat = 13000.0

// surelyFlashedC is the upper end of the criterion for flashover (500 to 600 C, PD
// 7974-1 and CIBSE Guide E).
const surelyFlashedC = 600.0

// flameAt is the burning that shows in or outside an opening, kW: what burns there, or
// the flame of a flashed-over room as far as it reaches out, whichever is more. The
// model books that flame's heat inside; where its tip stands is the window flame's
// formula (CIBSE Guide E eq. 6.57), taken from the outflow's foot and turned into the
// power of a free flame of that length (eq. 6.55), for the pictures draw it by that.
func (r *Run) flameAt(v *zone.Vent, p *cue.Physical) float64 {
	there := (v.JetW + v.OutsideW) / 1000
	if v.Horizontal || v.B != zone.OutsideRoom || v.Crack || p.OutBandM <= 0 || p.Cracked() {
		return there
	}
	room := &r.model.Rooms[v.A]
	flashed := num.Smooth(room.Gas[zone.Upper].Temp()-zone.Kelvin, truth.FlashoverC, surelyFlashedC)
	if flashed <= 0 {
		return there
	}
	burns := room.Out.BurnW / 1000 * r.shareOfOutflow(v)
	if burns <= there {
		return there
	}
	window := handcalc.Vent{WidthM: v.Slot.Width * v.Free(), HeightM: p.HeightM}
	tip := flashed * (handcalc.WindowFlame(window, burns/woodHeat) + p.OutBandM)
	if tip <= 0 {
		return there
	}
	span := tip / 0.2
	return math.Max(there, math.Min(burns, span*span*math.Sqrt(span)))
}

// shareOfOutflow is an opening's part of all that leaves its room A.
func (r *Run) shareOfOutflow(of *zone.Vent) float64 {
	all := 0.0
	for i := range r.model.Vents {
		out, in := r.through(i)
		switch of.A {
		case r.model.Vents[i].A:
			all += out
		case r.model.Vents[i].B:
			all += in
		}
	}
	if all <= 0 {
		return 0
	}
	return of.Flow.TotalOut() / all
}
