package handcalc

import (
	"math"

	"lintel/engine/internal/num"
)

// ClosedRoom is a room with every opening shut and a steady fire.
type ClosedRoom struct {
	Room     Room
	Lining   Lining
	HRRKW    float64
	AmbientC float64
}

// Beyler is the rise of the gas temperature in K in a closed room after seconds
// of a steady fire.
//
//	ΔT = (2·K2/K1²)·(K1·√t − 1 + e^(−K1·√t))
//	K1 = 2·0.4·√(kρc)·A_T/(m·c_p),  K2 = Q/(m·c_p)
//
// Holds while the fire still burns freely, and for thick walls: the room has
// leaks enough to keep its pressure, and the lining is not yet heated through.
//
// Source: nureg_1805 chapter 2; firemodels_cor, No Ventilation.
// Check: testdata/handcalc/closed_room.csv.
func Beyler(c ClosedRoom, seconds float64) float64 {
	gas := AirDensity(c.AmbientC) * c.Room.Volume() * heatCapacity
	k1 := 2 * 0.4 * math.Sqrt(c.Lining.Inertia()) * c.Room.Surface(Vent{}) / gas
	k2 := c.HRRKW / gas
	x := k1 * math.Sqrt(seconds)
	return 2 * k2 / (k1 * k1) * (x - 1 + num.Exp(-x))
}
