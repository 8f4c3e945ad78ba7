package handcalc

import (
	"math"

	"lintel/engine"
	"lintel/engine/internal/num"
)

// Fire is a burning area away from walls.
type Fire struct {
	HRRKW    float64
	AreaM2   float64
	Radiant  float64 // share of the heat release that is radiated
	AmbientC float64
}

// Diameter of the round fire of the same area, in m.
func (f Fire) Diameter() float64 { return diameter(f.AreaM2) }

// VirtualOrigin is the height in m from which the plume seems to spring; it may
// lie below the floor.
//
//	z₀ = −1.02·D + 0.083·Q^(2/5)
//
// Source: heskestad_plume, as in cfast_tech_ref and nureg_1805 chapter 9.
func (f Fire) VirtualOrigin() float64 {
	return -1.02*f.Diameter() + 0.083*num.Pow(f.HRRKW, 0.4)
}

// PlumeRise is the rise of temperature in K on the plume's axis, heightM above
// the fire (Heskestad).
//
//	ΔT₀ = 9.1·(T∞/(g·c_p²·ρ²))^⅓·Q_c^(2/3)·(z − z₀)^(−5/3)
//
// Holds above the flame's mean tip; capped there at 900 K in zone models.
//
// Source: nureg_1805 chapter 9; firemodels_cor, Heskestad method.
// Check: testdata/handcalc/plume.csv.
func PlumeRise(f Fire, heightM float64) (float64, error) {
	density := AirDensity(f.AmbientC)
	factor := third(kelvin(f.AmbientC) / (gravity * heatCapacity * heatCapacity * density * density))
	above := heightM - f.VirtualOrigin()
	rise := 9.1 * factor * num.Pow(f.HRRKW*(1-f.Radiant), 2.0/3) * num.Pow(above, -5.0/3)
	if heightM < FlameHeight(f) {
		return rise, engine.Bad("height_m", "lies inside the flame", "use a height above the flame's tip")
	}
	return rise, nil
}

// PlumeFlow is the mass flow of the plume in kg/s, heightM above the fire.
//
//	m = 0.071·Q_c^⅓·(z − z₀)^(5/3) + 0.0019·Q_c   above the flame
//	m = m(L)·z/L                                   inside it
//
// The engineering form, from memory, to be confirmed; cfast_tech_ref gives the
// form in SI that it rounds.
func PlumeFlow(f Fire, heightM float64) float64 {
	flame := math.Max(FlameHeight(f), 0)
	convected := f.HRRKW * (1 - f.Radiant)
	at := math.Max(heightM, flame)
	flow := 0.071*third(convected)*num.Pow(math.Max(0, at-f.VirtualOrigin()), 5.0/3) + 0.0019*convected
	if heightM < flame {
		return flow * heightM / flame
	}
	return flow
}

// McCaffreyRise is the rise of temperature in K on the axis of flame and plume.
//
//	ΔT₀ = (κ/(0.9·√(2g)))²·(z/Q^(2/5))^(2η−1)·T∞
//
// with κ, η of 6.8, ½ in the steady flame (z/Q^(2/5) under 0.08), 1.9, 0 in the
// flickering one (to 0.2), and 1.1, −⅓ in the plume above.
//
// Source: firemodels_cor, McCaffrey method (NBSIR 79-1910).
// Check: testdata/handcalc/plume.csv.
func McCaffreyRise(f Fire, heightM float64) float64 {
	x := heightM / num.Pow(f.HRRKW, 0.4)
	kappa, eta := 1.1, -1.0/3
	switch {
	case x < 0.08:
		kappa, eta = 6.8, 0.5
	case x < 0.2:
		kappa, eta = 1.9, 0
	}
	root := kappa / (0.9 * math.Sqrt(2*gravity))
	return root * root * num.Pow(x, 2*eta-1) * kelvin(f.AmbientC)
}
