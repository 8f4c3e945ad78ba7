package handcalc

import (
	"math"

	"lintel/engine/internal/num"
)

// FlameHeight is the mean height of the flame in m (Heskestad); below 0 means
// that the fire breaks up into many small flames.
//
//	L = 0.235·Q^(2/5) − 1.02·D
//
// Source: nureg_1805 chapters 3 and 9. Check: testdata/handcalc/flame.csv.
func FlameHeight(f Fire) float64 {
	return 0.235*num.Pow(f.HRRKW, 0.4) - 1.02*f.Diameter()
}

// FlameRatio is the flame's height over the fire's diameter, from the
// dimensionless heat release.
//
//	L/D = 3.7·Q*^(2/5) − 1.02
//
// Source: heskestad_plume; firemodels_exp table. Check: testdata/handcalc/flame.csv.
func FlameRatio(heatStar float64) float64 { return 3.7*num.Pow(heatStar, 0.4) - 1.02 }

// HeatStar is the dimensionless heat release Q* of a fire.
//
//	Q* = Q/(ρ·c_p·T∞·√g·D^(5/2))
//
// Source: firemodels_cor, Target Heat Flux.
func HeatStar(f Fire) float64 {
	air := AirDensity(f.AmbientC) * heatCapacity * kelvin(f.AmbientC) * math.Sqrt(gravity)
	return f.HRRKW / (air * num.Pow(f.Diameter(), 2.5))
}

// FlameHeightSimple is the flame's height in m where nothing is known of the
// fire but its heat release.
//
//	L = 0.2·Q^(2/5)
//
// Source: cibse_guide_e equation 6.55. Check: testdata/handcalc/flame.csv.
func FlameHeightSimple(hrrKW float64) float64 { return 0.2 * num.Pow(hrrKW, 0.4) }

// WindowFlame is how far the flame reaches above an opening's head, in m, when
// burnedKgS of fuel burns in the room behind it without wind.
//
//	z = 12.8·(R/w)^(2/3) − h
//
// Holds for a room that has flashed over, burning at what its opening lets in.
// Source: cibse_guide_e equation 6.57. Check: testdata/handcalc/flame.csv.
func WindowFlame(v Vent, burnedKgS float64) float64 {
	return float64(12.8*num.Pow(burnedKgS/v.WidthM, 2.0/3)) - v.HeightM
}
