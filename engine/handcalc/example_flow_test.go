package handcalc_test

import (
	"fmt"

	"lintel/engine/handcalc"
)

// Example VIS-2: NUREG-1805 equation 18-1, as tested in an open fire library;
// a lit sign, 37,000 ft2/lb and 6e-6 lb/ft3, answer in feet.
func ExampleVisibility() {
	fmt.Printf("%.3f ft\n", handcalc.Visibility(8, 37000*6e-6))
	// Output: 36.036 ft
}

// Example VIS-3: NUREG-1805 equation 18-3, as tested in an open fire library.
func ExampleSoot() {
	fmt.Printf("%.2f\n", handcalc.Soot(0.015, 2))
	// Output: 0.03
}

// Example OBS-1: a zone model's default smoke detector, 8 % a foot, is 24 % a
// metre (23.9).
func ExampleObscuration() {
	fmt.Printf("%.1f %%/m\n", handcalc.Obscuration(handcalc.OpticalDensity(8)/0.3048))
	// Output: 23.9 %/m
}

// Example NP-1: derived from hydrostatic vent flow.
func ExampleNeutralPlane() {
	for _, gasC := range []float64{300, 600, 830, 1000} {
		fmt.Printf("%.3f\n", handcalc.NeutralPlane(handcalc.HotGas{GasC: gasC, AmbientC: 20}))
	}
	// Output:
	// 0.444
	// 0.410
	// 0.391
	// 0.380
}

// Example NP-2: derived from hydrostatic vent flow, the 0.5 rule.
func ExampleInflow() {
	for _, gasC := range []float64{200, 400, 600, 1000} {
		fmt.Printf("%.3f\n", handcalc.Inflow(handcalc.HotGas{GasC: gasC, AmbientC: 20}, 0.7))
	}
	// Output:
	// 0.479
	// 0.529
	// 0.533
	// 0.512
}

// Example VEL-1: Bernoulli in cold air.
func ExampleSpeedFrom() {
	for _, pascal := range []float64{1, 2, 5, 10, 25, 50} {
		fmt.Printf("%.2f ", handcalc.SpeedFrom(pascal, 1.2))
	}
	fmt.Println("m/s")
	// Output: 1.29 1.83 2.89 4.08 6.45 9.13 m/s
}

// Example WND-1: Bernoulli, wind brought to rest.
func ExampleWindPressure() {
	for _, speed := range []float64{2, 5, 8.9, 10, 20} {
		fmt.Printf("%.1f ", handcalc.WindPressure(speed, 1.2))
	}
	fmt.Println("Pa")
	// Output: 2.4 15.0 47.5 60.0 240.0 Pa
}

// Example FAN-1: the ventilation verification of the CFAST Validation Guide.
func ExampleOrificePressure() {
	hole := handcalc.Orifice{FlowM3S: 0.01, AreaM2: 1e-4, Coefficient: 0.7, DensityKgM3: 1.2}
	fmt.Printf("%.0f Pa\n", handcalc.OrificePressure(hole))
	// Output: 12245 Pa
}

// A fire of 1 MW, 300 s, 3 m/s and 10 Pa at a scale of 1:6 (Froude laws,
// derived).
func ExampleScaled() {
	const sixth = 1.0 / 6
	fmt.Printf("%.1f kW, %.0f s, %.2f m/s, %.1f Pa\n",
		1000*handcalc.Scaled(sixth, handcalc.ScaleHeat), 300*handcalc.Scaled(sixth, handcalc.ScaleTime),
		3*handcalc.Scaled(sixth, handcalc.ScaleVelocity), 10*handcalc.Scaled(sixth, handcalc.ScalePressure))
	// Output: 11.3 kW, 122 s, 1.22 m/s, 1.7 Pa
}
