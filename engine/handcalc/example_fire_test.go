package handcalc_test

import (
	"fmt"

	"lintel/engine/handcalc"
)

// Example ASET-1: firemodels/cor Correlation Guide, ASET method, verification
// table (NIST/NRC test 1).
func ExampleLayerDepthASET() {
	for _, seconds := range []float64{10, 60, 100, 200, 300} {
		fmt.Printf("%3.0f s %.1f m\n", seconds, handcalc.LayerDepthASET(fillingRoom, seconds))
	}
	// Printed as 0.35, 1.60, 2.26, 3.34 and 3.82 by a step of one second; the
	// table test holds each within 0.02 m.
	// Output:
	//  10 s 0.3 m
	//  60 s 1.6 m
	// 100 s 2.3 m
	// 200 s 3.3 m
	// 300 s 3.8 m
}

// Example YT-1: firemodels/cor Correlation Guide, Yamana and Tanaka method,
// verification table (NIST/NRC test 1).
func ExampleLayerDepthYamanaTanaka() {
	for _, seconds := range []float64{10, 30, 60, 100, 200, 300, 1000} {
		fmt.Printf("%4.0f s %.2f m\n", seconds, handcalc.LayerDepthYamanaTanaka(fillingRoom, seconds))
	}
	// Output:
	//   10 s 0.28 m
	//   30 s 0.75 m
	//   60 s 1.31 m
	//  100 s 1.86 m
	//  200 s 2.64 m
	//  300 s 3.04 m
	// 1000 s 3.67 m
}

// Example PLM-1: NUREG-1805 sheet v1805.1 chapter 9 (VTT test 1).
func ExamplePlumeRise() {
	rise, _ := handcalc.PlumeRise(poolFire, 6)
	fmt.Printf("D %.5f m, z0 %.6f m, L %.2f m, T %.3f C\n",
		poolFire.Diameter(), poolFire.VirtualOrigin(), handcalc.FlameHeight(poolFire), 22+rise)
	// Output: D 1.16993 m, z0 0.242645 m, L 2.87 m, T 133.763 C
}

// Example PLM-1 by McCaffrey: firemodels/cor Correlation Guide, McCaffrey
// method, verification table (VTT test 1).
func ExampleMcCaffreyRise() {
	fmt.Printf("%.2f C\n", 22+handcalc.McCaffreyRise(poolFire, 6))
	// Output: 153.21 C
}

// Example JET-2: NUREG-1805 sheet v1805.1 chapters 10 and 11.
func ExampleJetRise() {
	under := handcalc.Ceiling{HRRKW: 10.23, HeightM: 2.1, RadiusM: 1.3}
	fmt.Printf("%.4f K, %.6f m/s\n", handcalc.JetRise(under), handcalc.JetSpeed(under))
	// Output: 10.1356 K, 0.492966 m/s
}

// Example FLM-2: CIBSE Guide E equation 6.55, as tested in an open fire library.
func ExampleFlameHeightSimple() {
	fmt.Printf("%.6f m\n", handcalc.FlameHeightSimple(1000))
	// Output: 3.169786 m
}

// Example RAD-1: NUREG-1805 sheet v1805.1 chapter 5.
func ExamplePointSource() {
	distance := 0.5 + burner.Diameter()/2
	fmt.Printf("R %.6f m, %.5f kW/m2\n", distance, handcalc.PointSource(burner, distance))
	// Output: R 0.669257 m, 6.21831 kW/m2
}

// Example RAD-2: firemodels/cor Correlation Guide, Point Source, verification
// table (Fleury test 7).
func ExamplePointSourceAside() {
	for _, across := range []float64{0.5, 0.75, 1.0} {
		fmt.Printf("%.2f kW/m2\n", handcalc.PointSourceAside(burner, across, 0))
	}
	// Output:
	// 6.01 kW/m2
	// 3.65 kW/m2
	// 2.33 kW/m2
}

// Examples FO-1 to FO-3: NUREG-1805 example 13.10-1, 20 x 25 x 12 ft, vent 3 x 8
// ft, concrete 6 in (from memory, to be confirmed).
func ExampleFlashoverMQH() {
	const foot = 0.3048
	room := handcalc.Room{LengthM: 20 * foot, WidthM: 25 * foot, HeightM: 12 * foot}
	vent := handcalc.Vent{WidthM: 3 * foot, HeightM: 8 * foot}
	e := handcalc.Enclosure{TransferKWM2K: 0.0016 / (foot / 2), SurfaceM2: room.Surface(vent), VentFactor: vent.Factor()}
	fmt.Printf("MQH %.0f kW\n", handcalc.FlashoverMQH(e))
	fmt.Printf("Babrauskas %.0f kW\n", handcalc.FlashoverBabrauskas(e.VentFactor))
	fmt.Printf("Thomas %.0f kW\n", handcalc.FlashoverThomas(e))
	// Output:
	// MQH 1612 kW
	// Babrauskas 2611 kW
	// Thomas 2806 kW
}

// Example FO-4: PD 7974-1:2019 equation 28, as tested in an open fire library.
func ExampleFlashoverThomas() {
	vent := handcalc.Vent{WidthM: 2.0 / 9, HeightM: 9}
	fmt.Printf("%.1f kW\n", handcalc.FlashoverThomas(handcalc.Enclosure{SurfaceM2: 1, VentFactor: vent.Factor()}))
	// Output: 2275.8 kW
}

// Example FO-5: PD 7974-1:2019 equation 29, as tested in an open fire library.
func ExampleEnclosure() {
	e := handcalc.Enclosure{TransferKWM2K: 0.01, SurfaceM2: 10, VentFactor: 0.5}
	fmt.Printf("%.10f kW\n", handcalc.FlashoverMQH(e))
	// Output: 136.4001466275 kW
}

// Example FO-7: CIBSE Guide E equation 6.7, as tested in an open fire library.
func ExampleFlashoverCIBSE() {
	vent := handcalc.Vent{WidthM: 2 / 2.1, HeightM: 2.1}
	fmt.Printf("%.4f kW\n", handcalc.FlashoverCIBSE(vent.Factor()))
	// Output: 1738.9652 kW
}
