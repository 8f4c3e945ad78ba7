package handcalc

import (
	"math"

	"lintel/engine/internal/num"
)

// FannedRoom is a room whose air is moved by a fan, with a steady fire.
type FannedRoom struct {
	Room     Room
	Lining   Lining
	HRRKW    float64
	FanKgS   float64
	AmbientC float64
}

// FootePagniAlvares is the rise of the hot layer's temperature in K under forced
// ventilation.
//
//	ΔT/T∞ = 0.63·(Q/(m·c_p·T∞))^0.72·(h_k·A_T/(m·c_p))^−0.36
//
// Fitted to rooms with a fan and a steady burner.
//
// Source: nureg_1805 chapter 2; firemodels_cor, Forced Ventilation (FPA).
// Check: testdata/handcalc/forced.csv.
func FootePagniAlvares(f FannedRoom, seconds float64) float64 {
	ambient := kelvin(f.AmbientC)
	flow := f.FanKgS * heatCapacity
	loss := f.Lining.HeatTransfer(seconds) * f.Room.Surface(Vent{})
	return 0.63 * num.Pow(f.HRRKW/(flow*ambient), 0.72) * num.Pow(loss/flow, -0.36) * ambient
}

// DealBeyler is the same by a heat balance.
//
//	ΔT = Q/(m·c_p + h_k·A_T),  h_k = 0.4·max(√(kρc/t), k/δ)
//
// Holds up to about 2000 s (from memory, to be confirmed).
//
// Source: nureg_1805 chapter 2; firemodels_cor, Forced Ventilation (DB).
// Check: testdata/handcalc/forced.csv.
func DealBeyler(f FannedRoom, seconds float64) float64 {
	through := f.Lining.ConductivityKWMK / f.Lining.ThicknessM
	transfer := 0.4 * math.Max(math.Sqrt(f.Lining.Inertia()/seconds), through)
	return f.HRRKW / (f.FanKgS*heatCapacity + transfer*f.Room.Surface(Vent{}))
}
