package handcalc

import "math"

// The flashover correlations give the heat release in kW at which a room with
// one opening is expected to flash over. Real rooms have flashed over below
// them, so they bound it from above (cfast_validation_guide, survey chapter).

// Enclosure is what the correlations need of a room: heat transfer into its
// lining, lined surface, and A·√H of its opening.
type Enclosure struct{ TransferKWM2K, SurfaceM2, VentFactor float64 }

// FlashoverMQH is from the layer's rise of 500 K.
//
//	Q = 610·√(h_k·A_T·A·√H)
//
// Source: nureg_1805 chapter 13; pd_7974_1 equation 29.
// Check: testdata/handcalc/flashover.csv.
func FlashoverMQH(e Enclosure) float64 {
	return 610 * math.Sqrt(e.TransferKWM2K*e.SurfaceM2*e.VentFactor)
}

// FlashoverThomas is from a rise of 600 K and a heat balance.
//
//	Q = 7.8·A_T + 378·A·√H
//
// Source: nureg_1805 chapter 13; pd_7974_1 equation 28.
// Check: testdata/handcalc/flashover.csv.
func FlashoverThomas(e Enclosure) float64 { return 7.8*e.SurfaceM2 + 378*e.VentFactor }

// FlashoverBabrauskas is about half of what the opening's air can burn.
//
//	Q = 750·A·√H
//
// Source: nureg_1805 chapter 13. Check: testdata/handcalc/flashover.csv.
func FlashoverBabrauskas(ventFactor float64) float64 { return 750 * ventFactor }

// FlashoverCIBSE is the smallest of the family.
//
//	Q = 600·A·√H
//
// Source: cibse_guide_e equation 6.7. Check: testdata/handcalc/flashover.csv.
func FlashoverCIBSE(ventFactor float64) float64 { return 600 * ventFactor }
