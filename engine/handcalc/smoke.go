package handcalc

import (
	"math"

	"lintel/engine/internal/num"
)

// Soot is the mass of soot from burning fuel: yield times mass, in the fuel's
// own unit.
//
// Source: nureg_1805 equation 18-3. Check: testdata/handcalc/smoke.csv.
func Soot(yield, burned float64) float64 { return yield * burned }

// Visibility is how far one sees through smoke: constant over the extinction
// coefficient K = α·m, in the unit of α·m turned over. The constant is 8 for a
// sign that is lit and 3 for one that only reflects (the 3 from memory, to be
// confirmed).
//
// Source: nureg_1805 equation 18-1; cibse_guide_e equation 10.7.
// Check: testdata/handcalc/smoke.csv.
func Visibility(constant, extinction float64) float64 { return constant / extinction }

// Obscuration is the light lost over one unit of length, in per cent, at an
// optical density D a unit: 100·(1 − 10^(−D)).
//
// Source: cfast_tech_ref, visibility. Check: testdata/handcalc/smoke.csv.
func Obscuration(density float64) float64 { return 100 * (1 - num.Exp(-density*math.Ln10)) }

// OpticalDensity is the density a unit of length from an obscuration in per
// cent: the inverse of Obscuration.
func OpticalDensity(percent float64) float64 { return -num.Log(1-percent/100) / math.Ln10 }
