package handcalc

import (
	"math"

	"lintel/engine/internal/num"
)

// LayerDepthASET is how far the smoke layer has come down from the ceiling, in
// m, in a closed room after seconds of a steady fire on the floor, losing no
// heat: the plume's volume and the gas's expansion fill the room from above.
//
//	L·W·dz/dt = −[0.21·(g/(ρ·T))^⅓·Q^⅓·z^(5/3) + Q/353]
//
// Holds for a leak at floor level, a fire away from the walls, and a layer that
// does not yet reach the fuel. Stepped by the midpoint rule.
//
// Source: firemodels_cor, ASET method, after Zukoski's plume.
// Check: testdata/handcalc/filling.csv.
func LayerDepthASET(c ClosedRoom, seconds float64) float64 {
	ambient := kelvin(c.AmbientC)
	entrain := 0.21 * third(gravity/(AirDensity(c.AmbientC)*ambient)) * third(c.HRRKW)
	expand := c.HRRKW / 353
	fall := func(z float64) float64 {
		return (entrain*num.Pow(math.Max(0, z), 5.0/3) + expand) / c.Room.Floor()
	}
	const steps = 2000
	dt := seconds / steps
	z := c.Room.HeightM
	for range steps {
		z -= dt * fall(z-dt/2*fall(z))
	}
	return c.Room.HeightM - math.Max(0, z)
}

// LayerDepthYamanaTanaka is the same in closed form, with the layer's
// temperature from Beyler's correlation.
//
//	z = (2·k·Q^⅓·t/(3·A) + H^(−2/3))^(−3/2),  k = 0.076/ρ_layer
//
// Source: firemodels_cor, Yamana and Tanaka method; nureg_1805 chapter 2.
// Check: testdata/handcalc/filling.csv.
func LayerDepthYamanaTanaka(c ClosedRoom, seconds float64) float64 {
	k := 0.076 / AirDensity(c.AmbientC+Beyler(c, seconds))
	height := c.Room.HeightM
	fill := 2 * k * third(c.HRRKW) * seconds / (3 * c.Room.Floor())
	return height - num.Pow(fill+num.Pow(height, -2.0/3), -1.5)
}
