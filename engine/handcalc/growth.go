package handcalc

import "math"

// GrowthTime is when a fire that grows as Q = α·t² reaches a heat release, in s.
//
// Source: karlsson_quintiere_2000, as cited by an open package of fire formulas.
// Check: testdata/handcalc/growth.csv.
func GrowthTime(alphaKWS2, hrrKW float64) float64 { return math.Sqrt(hrrKW / alphaKWS2) }
