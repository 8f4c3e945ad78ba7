package handcalc

import "math"

// SpeedFrom is the speed in m/s that a pressure difference in Pa gives a gas of
// the given density.
//
//	v = √(2·Δp/ρ)
//
// Ideal; an opening's mean speed is about 0.7 of it.
// Source: Bernoulli. Check: testdata/handcalc/pressure.csv.
func SpeedFrom(pascal, densityKgM3 float64) float64 { return math.Sqrt(2 * pascal / densityKgM3) }

// WindPressure is the pressure in Pa of wind that is brought to rest.
//
//	p = ½·ρ·U²
//
// Source: Bernoulli. Check: testdata/handcalc/pressure.csv.
func WindPressure(windMS, densityKgM3 float64) float64 { return densityKgM3 / 2 * windMS * windMS }

// Orifice is a hole and what flows through it.
type Orifice struct{ FlowM3S, AreaM2, Coefficient, DensityKgM3 float64 }

// OrificePressure is the pressure in Pa that drives a flow through a hole.
//
//	p = ½·ρ·(V/(C·A))²
//
// Source: cfast_validation_guide, verification of ventilation.
// Check: testdata/handcalc/pressure.csv.
func OrificePressure(o Orifice) float64 {
	return WindPressure(o.FlowM3S/(o.Coefficient*o.AreaM2), o.DensityKgM3)
}

// StackPressure is what each metre of hot gas adds in Pa, against air outside.
//
//	p = (ρ_a − ρ_g)·g
//
// Source: hydrostatics. Check: testdata/handcalc/pressure.csv.
func StackPressure(gas HotGas) float64 {
	return 353 * (1/kelvin15(gas.AmbientC) - 1/kelvin15(gas.GasC)) * gravity
}
