package handcalc

import (
	"math"

	"lintel/engine/internal/num"
)

// HotGas is the gas in a room and the air outside.
type HotGas struct{ GasC, AmbientC float64 }

// ratio of absolute temperatures, which is also that of densities turned over.
func (g HotGas) ratio() float64 { return kelvin15(g.GasC) / kelvin15(g.AmbientC) }

// NeutralPlane is where the flow through one opening on a hot, well-mixed room
// turns from in to out, as a share of its height from the sill.
//
//	z/H = 1/(1 + (T_g/T_a)^⅓)
//
// Holds for one opening, no wind, a room hot from floor to ceiling, and as much
// air in as smoke out.
//
// Source: hydrostatic vent flow (srsa_fire_ventilation p. 31; cfast_tech_ref).
// Check: testdata/handcalc/ventflow.csv.
func NeutralPlane(gas HotGas) float64 {
	return 1 / (1 + third(gas.ratio()))
}

// Inflow is the air that such a room draws through its opening, in kg/s for each
// m^(5/2) of A·√H, by an orifice coefficient.
//
//	m/(A·√H) = ⅔·C·ρ_a·√(2g)·√[(1 − ρ_g/ρ_a)/(1 + (ρ_a/ρ_g)^⅓)³]
//
// It is largest, about 0.5, near 500 °C: the 0.5·A·√H rule.
//
// Source: hydrostatic vent flow. Check: testdata/handcalc/ventflow.csv.
func Inflow(gas HotGas, coefficient float64) float64 {
	ratio := gas.ratio()
	density := 353 / kelvin15(gas.AmbientC)
	push := (1 - 1/ratio) / num.Pow(1+third(ratio), 3)
	return 2.0 / 3 * coefficient * density * math.Sqrt(2*gravity) * math.Sqrt(push)
}

// VentilationLimit is the heat release in kW that an opening's air can feed.
//
//	Q = 1500·A·√H
//
// Source: pd_7974_1 equation 33. A measured post-flashover room reached two
// thirds of it, so it bounds from above.
func VentilationLimit(ventFactor float64) float64 { return 1500 * ventFactor }

// kelvin15 converts degrees Celsius exactly, for the derived values.
func kelvin15(tempC float64) float64 { return tempC + 273.15 }
