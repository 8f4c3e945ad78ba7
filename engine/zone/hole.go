package zone

import (
	"math"

	"lintel/engine/internal/num"
)

// Hole is the free area of a horizontal opening between a room above and one
// below.
type Hole struct {
	Height float64 // m above the datum
	Area   float64
	Square bool
}

const (
	// holeCoefficient of a sharp-edged horizontal hole (Cooper 1989, in CFAST
	// Tech. Ref., ceiling and floor vents).
	holeCoefficient = 0.68

	// exchangeCoefficient and the flooding coefficients are of the same source:
	// heavy gas over light changes places through the hole until a pressure
	// difference large enough floods it one way.
	exchangeCoefficient = 0.10
	floodingRound       = 0.754
	floodingSquare      = 0.942

	// softHole rounds the square root of the pressure difference at zero, so
	// that Newton's method meets no infinite slope. Chosen by us, in Pa.
	softHole = 0.004
)

// HoleFlow is what passes a horizontal opening: kg/s up from the room below and
// down from the room above.
type HoleFlow struct {
	Up       float64
	Down     float64
	Exchange float64 // m³/s each way, part of Up and Down
	Over     float64 // Pa, below over above
	heat     float64 // K kg/s upward, net
	steepens float64
}

// Flow computes the flow through the hole: a net flow driven by the pressure
// difference and, where the gas above is the denser, an exchange flow. Densities
// are those of the gas next to the hole.
func (h Hole) Flow(below, above *Column, densityBelow, densityAbove float64, f *HoleFlow) {
	*f = HoleFlow{}
	if h.Area <= 0 {
		return
	}
	f.Over = below.Over(h.Height) - above.Over(h.Height)
	density := densityAbove
	if f.Over > 0 {
		density = densityBelow
	}
	size := math.Abs(f.Over) + softHole
	root := math.Sqrt(size)
	strength := holeCoefficient * h.Area * math.Sqrt(2*density)
	net := float64(strength*f.Over) / root
	temp := Density / density
	f.heat = float64(net * temp)
	f.steepens = float64(strength*temp) * (float64(0.5*math.Abs(f.Over)) + softHole) / float64(size*root)
	f.Up, f.Down = num.Max(net, 0), num.Max(-net, 0)
	f.exchange(h, densityBelow, densityAbove)
}

// exchange adds equal volumes both ways: equal volumes carry equal enthalpy, so
// the pressures do not feel it.
func (f *HoleFlow) exchange(h Hole, densityBelow, densityAbove float64) {
	heavier := densityAbove - densityBelow
	if heavier <= 0 {
		return
	}
	mean := float64(0.5 * (densityAbove + densityBelow))
	diameter := 2 * math.Sqrt(h.Area/math.Pi)
	coefficient := floodingRound
	if h.Square {
		coefficient = floodingSquare
	}
	fifth := float64(diameter*diameter) * float64(diameter*diameter) * diameter
	flood := float64(coefficient*coefficient) * Gravity * heavier * fifth / float64(2*h.Area*h.Area)
	calm := 1 - math.Abs(f.Over)/flood
	if calm <= 0 {
		return
	}
	f.Exchange = exchangeCoefficient * math.Sqrt(Gravity*heavier/mean*math.Sqrt(h.Area)) * h.Area * calm
	f.Up += float64(f.Exchange * densityBelow)
	f.Down += float64(f.Exchange * densityAbove)
}
