package handcalc

import (
	"math"

	"lintel/engine/internal/num"
)

// Ceiling is a point under a flat ceiling.
type Ceiling struct {
	HRRKW   float64
	HeightM float64 // of the ceiling above the fire
	RadiusM float64 // from the fire's axis
}

// JetRise is the rise of temperature in K of the ceiling jet (Alpert).
//
//	ΔT = 16.9·Q^(2/3)/H^(5/3)   for r/H up to 0.18
//	ΔT = 5.38·(Q/r)^(2/3)/H     beyond
//
// Holds for a steady fire under an unconfined ceiling before a layer forms.
//
// Source: nureg_1805 chapters 10 and 11. Check: testdata/handcalc/jet.csv.
func JetRise(c Ceiling) float64 {
	if c.RadiusM <= 0.18*c.HeightM {
		return 16.9 * num.Pow(c.HRRKW, 2.0/3) / num.Pow(c.HeightM, 5.0/3)
	}
	return 5.38 * num.Pow(c.HRRKW/c.RadiusM, 2.0/3) / c.HeightM
}

// JetSpeed is the speed of the ceiling jet in m/s (Alpert).
//
//	u = 0.96·(Q/H)^⅓                     for r/H up to 0.15
//	u = 0.195·Q^⅓·H^½·r^(−5/6)           beyond
//
// Source: nureg_1805 chapters 10 and 11. Check: testdata/handcalc/jet.csv.
func JetSpeed(c Ceiling) float64 {
	if c.RadiusM <= 0.15*c.HeightM {
		return 0.96 * third(c.HRRKW/c.HeightM)
	}
	return 0.195 * third(c.HRRKW) * math.Sqrt(c.HeightM) * num.Pow(c.RadiusM, -5.0/6)
}
