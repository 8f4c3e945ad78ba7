package zone

import (
	"math"
)

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
	root      [2]float64 // √(2ρ) of the two densities; these three from prepare
	lift      [2]float64 // kg/m³ by which the air outside is heavier
	rise      float64    // Pa that the pressure gains from the floor to the interface
}

// prepare works out what every opening of a room asks of its gas.
func (c *Column) prepare() {
	for layer, density := range c.Density {
		c.root[layer] = math.Sqrt(2 * density)
		c.lift[layer] = c.Air - density
	}
	c.rise = float64(Gravity * float64(c.lift[Lower]*(c.Interface-c.Floor)))
}

// Over is the departure from outside pressure at a height, in Pa.
func (c *Column) Over(z float64) float64 {
	if z <= c.Interface {
		return c.Pressure + float64(Gravity*float64(c.lift[Lower]*(z-c.Floor)))
	}
	return c.Pressure + c.rise + float64(Gravity*float64(c.lift[Upper]*(z-c.Interface)))
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
	first, second := a.Interface, b.Interface
	if first > second {
		first, second = second, first
	}
	low := edgeAt(s.Sill, a, b)
	if first > low.z && first < s.Head {
		high := edgeAt(first, a, b)
		f.slab(a, b, s.Width, low, high)
		low = high
	}
	if second > low.z && second < s.Head {
		high := edgeAt(second, a, b)
		f.slab(a, b, s.Width, low, high)
		low = high
	}
	high := edgeAt(s.Head, a, b)
	f.slab(a, b, s.Width, low, high)
	f.TopOver = high.over
}

// edge is the bottom or the top of a piece of an opening: its height, the
// pressure of a over b there, and the root of that.
type edge struct{ z, over, root float64 }

func edgeAt(z float64, a, b *Column) edge {
	over := a.Over(z) - b.Over(z)
	return edge{z: z, over: over, root: math.Sqrt(math.Abs(over))}
}

// slab splits a slab of constant densities at the neutral plane.
func (f *VentFlow) slab(a, b *Column, width float64, low, high edge) {
	if low.over*high.over >= 0 {
		if low.over+high.over != 0 {
			f.piece(a, b, width, low, high)
		}
		return
	}
	neutral := edge{z: low.z + float64((high.z-low.z)*(low.over/(low.over-high.over)))}
	if !(f.Neutral <= neutral.z) { // keep the lowest
		f.Neutral = neutral.z
	}
	f.piece(a, b, width, low, neutral)
	f.piece(a, b, width, neutral, high)
}

// piece adds a piece through which gas moves one way.
func (f *VentFlow) piece(a, b *Column, width float64, low, high edge) {
	outward := low.over+high.over > 0
	from, to := b, a
	if outward {
		from, to = a, b
	}
	middle := float64(0.5 * (low.z + high.z))
	layer := from.layerAt(middle)
	height := high.z - low.z
	strength := float64(FlowCoefficient * width * from.root[layer] * height)
	roots := low.root + high.root
	squares := float64(low.root*low.root) + float64(low.root*high.root) + float64(high.root*high.root)
	least := 1 / floor(roots, calmRoots)
	flow := float64(2.0 / 3.0 * strength * squares * least)
	slope := float64(strength * least)
	if roots < calmRoots {
		slope *= 2
	}
	temp := from.Temp[layer]
	f.steepens += float64(slope * temp)
	above := to.layerAt(middle) == Upper
	if outward {
		f.Out[layer] += flow
		f.heat += float64(flow * temp)
		f.OutBand += height
		f.OutTop = high.z
		if above {
			f.HighOut += flow
		}
		return
	}
	f.In[layer] += flow
	f.heat -= float64(flow * temp)
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
