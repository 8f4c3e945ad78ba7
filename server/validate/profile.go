package validate

import (
	"math"

	"lintel/engine/zone"
)

// profile is temperatures in °C at heights above the floor, lowest first.
type profile struct{ heights, temps []float64 }

// layers reduces a profile to two layers in a room of the given height: the
// lower layer as warm as the lowest sensor T_l, and the interface such that both
// ∫T dz and ∫dz/T are kept,
//
//	z = T_l (I1 I2 - H²) / (I1 + I2 T_l² - 2 T_l H)
//
// with I1 the first and I2 the second integral; the upper layer is the mean of
// what lies above. It is the reduction by which the published layer heights of
// the other series were made (Janssens and Tran, in the FDS User's Guide; from
// memory, to be confirmed).
func (p profile) layers(height float64) (z, lowerC, upperC float64) {
	lowest := p.temps[0] + 273.15
	first := p.integral(0, height, func(t float64) float64 { return t })
	second := p.integral(0, height, func(t float64) float64 { return 1 / t })
	below := first + second*lowest*lowest - 2*lowest*height
	if below <= 0 {
		return height, p.temps[0], p.temps[0]
	}
	z = math.Min(math.Max(0, lowest*(first*second-height*height)/below), height)
	if height-z < 0.001 {
		return height, p.temps[0], p.temps[0]
	}
	upper := p.integral(z, height, func(t float64) float64 { return t }) / (height - z)
	return z, p.temps[0], upper - 273.15
}

// integral of f(T) over height, T in kelvin, by steps of a thousandth.
func (p profile) integral(from, to float64, f func(float64) float64) float64 {
	const steps = 1000
	sum, dz := 0.0, (to-from)/steps
	for i := range steps {
		sum += dz * f(p.at(from+dz*(float64(i)+0.5))+273.15)
	}
	return sum
}

// at is °C at a height: straight lines between sensors, level beyond the last.
func (p profile) at(height float64) float64 {
	last := len(p.heights) - 1
	switch {
	case height <= p.heights[0]:
		return p.temps[0]
	case height >= p.heights[last]:
		return p.temps[last]
	}
	for i := range last {
		if height <= p.heights[i+1] {
			part := (height - p.heights[i]) / (p.heights[i+1] - p.heights[i])
			return p.temps[i] + part*(p.temps[i+1]-p.temps[i])
		}
	}
	return p.temps[last]
}

// stack is what the profile's lightness adds to the pressure over that of the
// air outside from one height to another, Pa.
func (p profile) stack(from, to, outsideC float64) float64 {
	outside := zone.Density / (outsideC + 273.15)
	return p.integral(from, to, func(t float64) float64 { return zone.Gravity * (outside - zone.Density/t) })
}
