package optics

import (
	"math"

	"lintel/engine/internal/num"
)

// Path is how far one looks through an outflow, in m: the square root of the
// area that it fills. A jet is as thick as its band is high when seen from in
// front and as its opening is wide when seen from the side; this lies between
// (chosen by us), and holds for a hatch and a crack as well.
func Path(outflowM2 float64) float64 { return math.Sqrt(math.Max(0, outflowM2)) }

// Depth is the optical depth K·L: extinction in 1/m over a path in m.
func Depth(extinctionM, pathM float64) float64 { return float64(extinctionM * pathM) }

// Transmitted is the share of light left after an optical depth: exp(−K·L).
func Transmitted(depth float64) float64 { return num.Exp(-depth) }
