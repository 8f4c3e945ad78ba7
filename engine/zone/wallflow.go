package zone

import "lintel/engine/internal/num"

// wallFlow is the share of the heat that walls take from the upper layer by
// convection which goes down with the gas it was taken from: gas cooled at a wall
// is heavier than the layer and sinks along it, into the lower layer where it has
// grown as cool as that (negatively buoyant wall flow; Jaluria and Cooper, 1989,
// title from memory, to be confirmed). The rest is given back to the layer on the
// way. Without it a closed room keeps a fresh lower part that measured ones do
// not have, and a dead-end room fills to the floor. Chosen by us with the means
// of the closed rooms, the corridor suite and the small box in view
// (fsri_compartment_closed, nbs_multiroom, nist_vent_study).
const wallFlow = 0.5

// sink lets gas of the upper layer that gave watts to the walls go down along
// them. It arrives at the temperature of the lower layer: its loss is charged to
// what arrives.
func (r *Room) sink(watts float64) {
	gap := r.now.temp[Upper] - r.now.temp[Lower]
	if watts <= 0 || gap < 1 {
		return
	}
	watts *= wallFlow * num.Smooth(gap, 3, 20)
	flow := watts / (dryHeat(r.now.temp[Upper]) - dryHeat(r.now.temp[Lower]))
	most := num.Min(0.4*r.budget(Upper), float64(wallFlowMost*r.Gas[Upper].Mass))
	if flow > most {
		watts *= most / flow
		flow = most
	}
	r.move(Upper, flow)
	r.rate[Upper].Heat += watts
	r.rate[Lower].Heat -= watts
}

// wallFlowMost is the share of the upper layer that sinks in a second at most.
// Chosen by us.
const wallFlowMost = 0.1
