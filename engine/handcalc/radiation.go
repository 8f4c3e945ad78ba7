package handcalc

import "math"

// PointSource is the heat flux in kW/m² on a surface that faces a fire across
// distanceM, all radiation coming from one point.
//
//	q = χ·Q/(4·π·R²)
//
// Holds beyond about two and a half fire diameters (from memory, to be
// confirmed); nearer it over-estimates or misses the flame's shape.
//
// Source: nureg_1805 chapter 5. Check: testdata/handcalc/radiation.csv.
func PointSource(f Fire, distanceM float64) float64 {
	return f.Radiant * f.HRRKW / (4 * math.Pi * distanceM * distanceM)
}

// PointSourceAside is the flux on a surface that faces sideways, acrossM from
// the flame's axis and upM above the fire, the point being a third up the flame.
//
//	q = (x/R)·χ·Q/(4·π·R²),  R² = x² + (z − L/3)²
//
// The printed example uses the flame height L = D·(3.7·Q*^(2/5) − 1.02).
//
// Source: firemodels_cor, Target Heat Flux. Check: testdata/handcalc/radiation.csv.
func PointSourceAside(f Fire, acrossM, upM float64) float64 {
	flame := f.Diameter() * FlameRatio(HeatStar(f))
	distance := math.Hypot(acrossM, upM-flame/3)
	return acrossM / distance * PointSource(f, distance)
}
