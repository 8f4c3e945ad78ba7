package handcalc

import "lintel/engine"

// OpenRoom is a room with one opening and a steady fire.
type OpenRoom struct {
	Room   Room
	Vent   Vent
	Lining Lining
	HRRKW  float64
}

// MQH is the rise of the hot layer's temperature in K, in a room with one
// opening, after seconds of a steady fire (McCaffrey, Quintiere and Harkleroad).
//
//	ΔT = 6.85·[Q²/(A·√H·h_k·A_T)]^⅓
//
// Holds before flashover: a rise of at most 600 K (from memory, to be
// confirmed), one opening, a fire away from the walls.
//
// Source: nureg_1805 chapter 2; firemodels_cor, Natural Ventilation.
// Check: testdata/handcalc/mqh.csv.
func MQH(o OpenRoom, seconds float64) (float64, error) {
	resistance := o.Vent.Factor() * o.Lining.HeatTransfer(seconds) * o.Room.Surface(o.Vent)
	rise := 6.85 * third(o.HRRKW*o.HRRKW/resistance)
	if rise > 600 {
		return rise, engine.Bad("hrr_kw", "gives a rise of more than 600 K", "use a flashover correlation")
	}
	return rise, nil
}
