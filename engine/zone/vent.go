package zone

import "math"

// Column is the gas of a room as an opening sees it: heights in metres above
// the datum, densities in kg/m³, and the pressure at the floor as its departure
// from that of the still air outside at the same height.
type Column struct {
	Floor     float64
	Interface float64
	Density   [2]float64
	Temp      [2]float64 // kelvin
	Pressure  float64    // Pa
	Air       float64    // density of the air outside
}

// Over is the departure from outside pressure at a height, in Pa.
func (c *Column) Over(z float64) float64 {
	if z <= c.Interface {
		return c.Pressure + float64(Gravity*float64((c.Air-c.Density[Lower])*(z-c.Floor)))
	}
	below := c.Pressure + float64(Gravity*float64((c.Air-c.Density[Lower])*(c.Interface-c.Floor)))
	return below + float64(Gravity*float64((c.Air-c.Density[Upper])*(z-c.Interface)))
}

// layerAt is the layer that fills the height.
func (c *Column) layerAt(z float64) int {
	if z > c.Interface {
		return Upper
	}
	return Lower
}

// Slot is the free area of a vertical opening.
type Slot struct {
	Sill  float64 // m above the datum
	Head  float64
	Width float64
}

// FlowCoefficient is the share of the ideal flow that passes a sharp-edged
// opening, both ways: 0.70 (CFAST Tech. Ref., wall vents; Bryant 2011 measured
// 0.69 in a doorway). The pair 0.68 in and 0.73 out is as good in flow and puts
// the neutral plane of the published room states 2 cm higher.
const FlowCoefficient = 0.70

// VentFlow is what passes an opening between columns a and b. Amounts are kg/s
// by the layer they come from.
type VentFlow struct {
	Out      [2]float64 // from a to b
	In       [2]float64 // from b to a
	Neutral  float64    // m above the datum, where the pressures are equal; NaN where nowhere in the opening
	OutBand  float64    // m of height over which gas goes from a to b
	InBand   float64
	TopOver  float64 // Pa from a to b at the top of the opening
	HighIn   float64 // kg/s of In that enters a above a's interface
	HighOut  float64 // kg/s of Out that enters b above b's interface
	OutTop   float64 // m above the datum, top of the outward band
	heat     float64 // K kg/s from a to b, net: mass flow times temperature
	steepens float64 // its growth with the pressure of a, per Pa
}

// TotalOut is kg/s from a to b.
func (f *VentFlow) TotalOut() float64 { return f.Out[Lower] + f.Out[Upper] }

// TotalIn is kg/s from b to a.
func (f *VentFlow) TotalIn() float64 { return f.In[Lower] + f.In[Upper] }

// Flow computes the two-layer flow through a vertical opening.
//
// The opening is cut at both interfaces, and each slab where the pressure
// difference changes sign; in a piece the difference is linear in height, and
//
//	flow = 2/3 C w √(2ρ) (t-b) (|Δt| + √(|Δt Δb|) + |Δb|) / (√|Δt| + √|Δb|)
//
// with the density of the gas that moves (CFAST Tech. Ref., wall vents, after
// Emmons). Holds for openings smaller than the wall they are in.
//
// Check: testdata/fire/steckler_1982.csv.
func (s Slot) Flow(a, b *Column, f *VentFlow) {
	*f = VentFlow{Neutral: math.NaN(), OutTop: math.NaN()}
	if s.Width <= 0 || s.Head <= s.Sill {
		return
	}
	cuts := [4]float64{s.Sill, clampTo(a.Interface, s), clampTo(b.Interface, s), s.Head}
	if cuts[1] > cuts[2] {
		cuts[1], cuts[2] = cuts[2], cuts[1]
	}
	low := s.Sill
	under := a.Over(low) - b.Over(low)
	for _, high := range cuts[1:] {
		if high <= low {
			continue
		}
		over := a.Over(high) - b.Over(high)
		s.slab(a, b, low, high, under, over, f)
		low, under = high, over
	}
	f.TopOver = under
}

// slab splits a slab of constant densities at the neutral plane.
func (s Slot) slab(a, b *Column, low, high, under, over float64, f *VentFlow) {
	if under*over >= 0 {
		if under+over != 0 {
			s.piece(a, b, low, high, under, over, f)
		}
		return
	}
	middle := low + float64((high-low)*(under/(under-over)))
	if !(f.Neutral <= middle) { // keep the lowest
		f.Neutral = middle
	}
	s.piece(a, b, low, middle, under, 0, f)
	s.piece(a, b, middle, high, 0, over, f)
}

// piece adds a piece through which gas moves one way.
func (s Slot) piece(a, b *Column, low, high, under, over float64, f *VentFlow) {
	outward := under+over > 0
	from, to := b, a
	if outward {
		from, to = a, b
	}
	middle := float64(0.5 * (low + high))
	layer := from.layerAt(middle)
	rootLow, rootHigh := math.Sqrt(math.Abs(under)), math.Sqrt(math.Abs(over))
	roots := rootLow + rootHigh
	height := high - low
	integral := float64(2.0/3.0*height) * (float64(rootLow*rootLow) + float64(rootLow*rootHigh) + float64(rootHigh*rootHigh)) / roots
	strength := float64(FlowCoefficient * s.Width * math.Sqrt(2*from.Density[layer]))
	slope := float64(strength*height) / roots
	if roots < calmRoots {
		integral = float64(integral * (roots / calmRoots))
		slope = float64(2*strength*height) / calmRoots
	}
	flow := float64(strength * integral)
	heat := float64(flow * from.Temp[layer])
	f.steepens += float64(slope * from.Temp[layer])
	above := to.layerAt(middle) == Upper
	if outward {
		f.Out[layer] += flow
		f.heat += heat
		f.OutBand += height
		f.OutTop = high
		if above {
			f.HighOut += flow
		}
		return
	}
	f.In[layer] += flow
	f.heat -= heat
	f.InBand += height
	if above {
		f.HighIn += flow
	}
}

// calmRoots is the sum of the roots of the pressure differences, √Pa, below
// which the flow falls off in proportion to pressure, as slow flow does, so that
// Newton's method meets no infinite slope. 0.0002 Pa is far below any pressure
// that matters. Chosen by us.
const calmRoots = 0.03

func clampTo(z float64, s Slot) float64 { return min(max(z, s.Sill), s.Head) }
