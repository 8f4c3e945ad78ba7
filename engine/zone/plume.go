package zone

import (
	"math"

	"lintel/engine"
	"lintel/engine/internal/num"
)

// Plume is the buoyant column over a fire.
type Plume struct {
	ConvectiveW float64
	TotalW      float64
	DiameterM   float64
	Faces       float64 // 1 in the open, 2 at a wall, 4 in a corner
	Ambient     float64 // kelvin, of the gas it entrains
}

// faces is how many mirror images of the plume the walls make.
func faces(place engine.Place) float64 {
	switch place {
	case engine.Wall:
		return 2
	case engine.Corner:
		return 4
	}
	return 1
}

// FlameHeight is L = 0.235 Q^(2/5) - 1.02 D, Q in kW and L in m (Heskestad, in
// CFAST Tech. Ref.), of the mirrored fire.
func (p Plume) FlameHeight() float64 {
	s := p.shape()
	return s.flame
}

// plumeShape is what the formulas share at every height.
type plumeShape struct {
	flame  float64 // m, height of the flame
	origin float64 // m, virtual origin above the base
	rise   float64 // kg/(s m^(5/3))
	near   float64 // m^(5/3)
	faces  float64
}

func (p *Plume) shape() plumeShape {
	d := p.DiameterM * math.Sqrt(p.Faces)
	fifth := num.FifthRoot(p.Faces * p.TotalW / 1000)
	total := float64(fifth * fifth) // Q^(2/5)
	q := num.Cbrt(p.Faces * p.ConvectiveW)
	return plumeShape{
		flame:  num.Max(0, float64(0.235*total)-float64(1.02*d)),
		origin: float64(0.083*total) - float64(1.02*d),
		rise:   0.196 * num.Cbrt(ambientLift(p.Ambient)) * q,
		near:   2.9 * q * q / stretch,
		faces:  p.Faces,
	}
}

// stretch is (√g c ρ T)^(2/3) of the formula below.
var stretch = func() float64 {
	root := num.Cbrt(math.Sqrt(Gravity) * HeatCap * Density)
	return root * root
}()

// Entrained is the mass flow of the plume at a height above the base of the
// fire, in kg/s: Heskestad's far-field formula above the flame, and a straight
// line from the base up to the flame tip below it (CFAST Tech. Ref., plume).
//
//	0.196 (g ρ²/(c T))^(1/3) Q^(1/3) (z-z0)^(5/3) (1 + 2.9 Q^(2/3) / ((√g c ρ T)^(2/3) (z-z0)^(5/3)))
//
// A wall or corner fire is the half or quarter of a fire mirrored in the walls.
func (p Plume) Entrained(z float64) float64 {
	if p.ConvectiveW <= 0 {
		return 0
	}
	s := p.shape()
	return s.entrained(z)
}

func (s *plumeShape) entrained(z float64) float64 {
	if z <= 0 {
		return 0
	}
	up := floor(num.Max(z, s.flame)-s.origin, 0.01)
	flow := float64(s.rise * (float64(up*num.Cbrt(up*up)) + s.near))
	if z < s.flame {
		flow *= z / s.flame
	}
	return flow / s.faces
}

const (
	// draughtGain and draughtMost say how much a draught through the room adds
	// to the plume's entrainment: 1 + gain · u/w, u the mean speed of the inflow
	// over the room's width below the interface, w the plume's own scale
	// (gQ/(ρ c T z))^(1/3). Fires away from walls were seen to entrain two to
	// three times the textbook plume because of the door draught (Steckler,
	// Quintiere and Rinkinen, NBSIR 82-2520, abstract), which sets the most.
	// The gain is fitted by us to the mean of those room states, not to rows.
	draughtGain = 9.0
	draughtMost = 1.7
)

// draught is the factor by which the inflow raises the plume's entrainment up
// to height z. inflow is m³/s into the room's lower part, of one stream or as
// several blow past the fire (see inhale).
func (p Plume) draught(inflow, width, z float64) float64 {
	if z <= 0 || p.ConvectiveW <= 0 {
		return 1
	}
	wide := floor(z, 0.05*width)
	speed := inflow / float64(width*wide)
	own := num.Cbrt(Gravity * p.ConvectiveW / float64(HeatCap*Density*wide))
	return 1 + num.Min(draughtMost, draughtGain*speed/floor(own, 1e-6))
}

// risen is what a buoyant stream entrains on its way up (or down) a height z,
// and no more than most: the plume formula of Zukoski with a virtual origin that
// gives the stream's own mass flow at the start. power is the stream's buoyant
// enthalpy in W against the gas of the given temperature.
func risen(flow, power, z, ambient, most float64) float64 {
	if z <= 0 || power <= 0 || most <= 0 {
		return 0
	}
	cube := float64(zukoski * zukoski * zukoski * power * ambientLift(ambient))
	// Thin streams reach the most even from a point, which needs no root to see.
	whole := flow + most
	if cube*fifthPower(z) >= float64(whole*whole)*whole {
		return most
	}
	end := z + num.FifthRoot(float64(flow*flow)*flow/cube)
	return num.Clamp(num.Cbrt(cube*fifthPower(end))-flow, 0, most)
}

func fifthPower(x float64) float64 { return float64(fourth(x) * x) }

// zukoski: m = 0.21 (gρ²/(cT))^(1/3) Q^(1/3) z^(5/3) (Zukoski, in the
// correlation guide of firemodels/cor).
const zukoski = 0.21

func ambientLift(ambient float64) float64 {
	rho := Density / ambient
	return Gravity * rho * rho / (HeatCap * ambient)
}
