package zone

import "lintel/engine/internal/num"

// driftSpeed is how fast soot and tar droplets drift to a colder face, m/s for each
// W/m² of convection into it: thermophoresis, v = 0.55 (ν/T) dT/dx, with dT/dx the
// flux over the conductivity of the gas. ν/(kT) of air is 1.8e-6 to 2.0e-6 m³/J
// from 300 to 1,000 K. (Talbot et al. 1980 for the form; 0.55 as fire models use
// it for soot on walls; from memory, to be confirmed.)
const driftSpeed = 0.55 * 1.9e-6

// mostSettled is the share of a layer's smoke that settles in a second at most.
// Chosen by us.
const mostSettled = 0.2

// deposit lets the smoke of a layer settle on the faces that took watts of
// convection from it, so that smoke in a shut room thins within minutes. What
// settles leaves the books; the heat that settled tar could release stays with the
// gas, a few thousandths of it.
func (m *Model) deposit(r *Room, layer int, watts, dt float64) {
	gas := &r.Gas[layer]
	if watts <= 0 || gas.Of[Soot]+gas.Of[Tar] <= 0 {
		return
	}
	share := num.Min(mostSettled, driftSpeed*watts/r.now.volume[layer])
	for _, i := range [...]int{Soot, Tar} {
		settled := float64(share * gas.Of[i])
		r.rate[layer].Of[i] -= settled
		m.Books.Out.Of[i] += float64(dt * settled)
	}
}
