package handcalc

import (
	"math"

	"lintel/engine/internal/num"
)

// gravity in m/s², as the sources round it.
const gravity = 9.81

// heatCapacity of air in kJ/kg/K, as the sources round it.
const heatCapacity = 1.0

// Room is a box-shaped room, inside measures in m.
type Room struct{ LengthM, WidthM, HeightM float64 }

// Vent is one upright opening.
type Vent struct{ WidthM, HeightM float64 }

// Lining is the material of walls, floor and ceiling.
type Lining struct {
	ConductivityKWMK float64 // kW/m/K
	DensityKgM3      float64
	HeatKJKgK        float64 // kJ/kg/K
	ThicknessM       float64
}

// Floor is the floor area in m².
func (r Room) Floor() float64 { return r.LengthM * r.WidthM }

// Volume in m³.
func (r Room) Volume() float64 { return r.Floor() * r.HeightM }

// Surface is the area of walls, floor and ceiling in m², without the vent.
func (r Room) Surface(v Vent) float64 {
	return 2*(r.LengthM*r.WidthM+r.LengthM*r.HeightM+r.WidthM*r.HeightM) - v.Area()
}

// Area of the vent in m².
func (v Vent) Area() float64 { return v.WidthM * v.HeightM }

// Factor is the ventilation factor A·√H in m^(5/2).
func (v Vent) Factor() float64 { return v.Area() * math.Sqrt(v.HeightM) }

// Inertia is the thermal inertia k·ρ·c in kW²·s/m⁴/K².
func (l Lining) Inertia() float64 { return l.ConductivityKWMK * l.DensityKgM3 * l.HeatKJKgK }

// PenetrationTime is when heat has crossed the lining, in s.
//
//	t_p = (ρ·c/k)·(δ/2)²
//
// Source: nureg_1805, chapter 2.
func (l Lining) PenetrationTime() float64 {
	half := l.ThicknessM / 2
	return l.DensityKgM3 * l.HeatKJKgK / l.ConductivityKWMK * half * half
}

// HeatTransfer is the effective heat transfer coefficient h_k in kW/m²/K after
// seconds of exposure: √(k·ρ·c/t) until the heat is through, k/δ afterwards.
//
// Source: nureg_1805, chapter 2.
func (l Lining) HeatTransfer(seconds float64) float64 {
	if seconds <= l.PenetrationTime() {
		return math.Sqrt(l.Inertia() / seconds)
	}
	return l.ConductivityKWMK / l.ThicknessM
}

// AirDensity in kg/m³ at atmospheric pressure: 353/T, ideal gas.
func AirDensity(tempC float64) float64 { return 353 / kelvin(tempC) }

// kelvin converts degrees Celsius by the 273 of the printed examples.
func kelvin(tempC float64) float64 { return tempC + 273 }

// third is the cube root.
func third(x float64) float64 { return num.Cbrt(x) }

// diameter of the circle with the given area.
func diameter(areaM2 float64) float64 { return math.Sqrt(4 * areaM2 / math.Pi) }
