package zone

import (
	"lintel/engine"
	"lintel/engine/internal/num"
)

// The inner faces of a room. The walls are two bands, because what they see
// changes as the interface moves; the bands themselves stay.
const (
	Ceiling = iota
	HighWall
	LowWall
	Ground
	faceCount
)

const cells = 8

// Face is a slab of lining, cut into cells that grow from the inside out.
type Face struct {
	Area     float64 // m²
	Temp     [cells]float64
	Char     float64 // kg/m² pyrolysed so far
	Hot      float64 // kg/(s m²) given off now
	gained   float64 // J/m² taken since the last conduction
	flux     float64 // W/m² of this step
	size     [cells]float64
	capacity [cells]float64 // J/(m² K)
	between  [cells]float64 // W/(m² K) to the next cell; the last to the outside
	half     float64        // m² K/W from the middle of the outermost cell to the back
	open     float64        // share of the back that is open to the air
	backs    []back         // what is behind the rest; never changed once laid
	Taken    float64        // J taken from the room in all
	factored float64        // the step that the three below are for, s
	toNext   [cells]float64
	inverse  [cells]float64
	over     [cells]float64
}

const (
	// firstCell is the depth of the first cell, m. Chosen by us: a fifth of
	// what a minute of heating penetrates in gypsum.
	firstCell = 0.0008

	// outerFilm is the heat transfer from the outer side to the surroundings,
	// convection and radiation together, W/(m² K). Usual value for still air
	// (from memory, to be confirmed).
	outerFilm = 10.0
)

// newFace cuts a lining into cells, each larger than the last by one factor.
func newFace(area float64, lining engine.Lining, thickness, temp float64) Face {
	f := Face{Area: area, open: 1}
	growth := growthFor(thickness)
	size := thickness * (growth - 1) / (power(growth, cells) - 1)
	if growth == 1 {
		size = thickness / cells
	}
	for i := range cells {
		f.size[i], f.Temp[i] = size, temp
		f.capacity[i] = lining.DensityKgM3 * lining.HeatCapacityJKgK * size
		size *= growth
	}
	for i := range cells - 1 {
		f.between[i] = 2 * lining.ConductivityWMK / (f.size[i] + f.size[i+1])
	}
	f.half = f.size[cells-1] / (2 * lining.ConductivityWMK)
	f.between[cells-1] = 1 / (f.half + 1/outerFilm)
	return f
}

// growthFor is the factor at which cells starting at firstCell fill a thickness.
func growthFor(thickness float64) float64 {
	if thickness <= firstCell*cells {
		return 1
	}
	low, high := 1.0, 20.0
	for range 60 {
		middle := float64(0.5 * (low + high))
		reach := float64(power(middle, cells)) - 1
		if float64(firstCell*reach)/(middle-1) < thickness {
			low = middle
		} else {
			high = middle
		}
	}
	return high
}

func power(x float64, n int) float64 {
	p := 1.0
	for range n {
		p = float64(p * x)
	}
	return p
}

// conduct carries the heat gained at the surface inwards over dt, implicitly, so
// that thin light linings stay stable (tridiagonal elimination; the factors are
// kept from step to step).
func (f *Face) conduct(dt, outside float64) {
	if f.factored != dt {
		f.factor(dt)
	}
	var right [cells]float64
	known := float64(f.capacity[0]*f.Temp[0]) + f.gained
	right[0] = float64(known * f.inverse[0])
	for i := 1; i < cells; i++ {
		known = float64(f.capacity[i]*f.Temp[i]) + float64(f.toNext[i-1]*right[i-1])
		if i == cells-1 {
			known += float64(f.toNext[i] * outside)
		}
		right[i] = float64(known * f.inverse[i])
	}
	f.Temp[cells-1] = right[cells-1]
	for i := cells - 2; i >= 0; i-- {
		f.Temp[i] = right[i] + float64(f.over[i]*f.Temp[i+1])
	}
	f.gained = 0
}

// factor works out what of the elimination depends on the step alone.
func (f *Face) factor(dt float64) {
	f.factored = dt
	back, before := 0.0, 0.0
	for i := range cells {
		f.toNext[i] = float64(dt * f.between[i])
		diagonal := f.capacity[i] + back + f.toNext[i] - float64(back*before)
		f.inverse[i] = 1 / diagonal
		f.over[i] = f.toNext[i] / diagonal
		back, before = f.toNext[i], f.over[i]
	}
}

// Surface is the temperature of the inner face, kelvin. The first cell is thin
// enough to stand for it.
func (f *Face) Surface() float64 { return num.Min(f.Temp[0], hottest) }

// hottest keeps a runaway out of the fourth power, kelvin. Up to it the first cell
// of the lightest lining (160 J/(m² K)) follows radiation stably from one conduction
// to the next: h = 4εσT³ stays under twice its capacity over their 0.2 s. Gas of
// rooms fully on fire is 300 K and more below it. Chosen by us.
const hottest = 1900.0

// warm gives the face a flux in W/m² for dt seconds.
func (f *Face) warm(flux, dt float64) {
	f.gained += float64(flux * dt)
	f.flux += flux
	f.Taken += float64(flux * f.Area * dt)
}
