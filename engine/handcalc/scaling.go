package handcalc

import "lintel/engine/internal/num"

// The Froude laws: how a quantity of a small model stands to full size when both
// look alike, as powers of the ratio of lengths. Temperatures and concentrations
// stay the same. Small rooms lose more heat, and flow turns smooth below about
// 0.1 m of opening or 1 kW (from memory, to be confirmed).
//
// Source: froude_scaling; exponents by dimensional argument.
// Check: testdata/handcalc/scaling.csv.
const (
	ScaleTime       = 0.5
	ScaleVelocity   = 0.5
	ScalePressure   = 1.0
	ScaleHeat       = 2.5
	ScaleMassFlow   = 2.5
	ScaleInertia    = 1.5 // kρc that keeps the share of heat lost to thick walls
	ScaleExtinction = -1.0
)

// Scaled is the factor on a quantity at a ratio of lengths, model over full size.
func Scaled(lengthRatio, exponent float64) float64 { return num.Pow(lengthRatio, exponent) }
