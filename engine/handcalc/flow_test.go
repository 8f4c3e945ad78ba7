package handcalc_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/engine/handcalc"
	"lintel/engine/internal/published"
)

func TestVentFlow(t *testing.T) {
	for _, row := range published.Read(t, "handcalc/ventflow.csv").Rows {
		gas := handcalc.HotGas{GasC: row.Float("gas_c"), AmbientC: 20}
		if row.Has("plane") {
			check(t, row, row.Float("plane"), handcalc.NeutralPlane(gas))
		}
		if row.Has("inflow") {
			check(t, row, row.Float("inflow"), handcalc.Inflow(gas, 0.70))
		}
	}
}

// The formula against measured rooms after flashover.
func TestNeutralPlaneOfMeasuredRooms(t *testing.T) {
	for _, row := range published.Read(t, "handcalc/measured_planes.csv").Rows {
		gas := handcalc.HotGas{GasC: row.Float("gas_c"), AmbientC: 20}
		check(t, row, row.Float("plane"), handcalc.NeutralPlane(gas))
	}
}

func TestPressures(t *testing.T) {
	for _, row := range published.Read(t, "handcalc/pressure.csv").Rows {
		x := row.Float("x")
		var got float64
		switch row.Text("kind") {
		case "speed":
			got = handcalc.SpeedFrom(x, 1.2)
		case "wind":
			got = handcalc.WindPressure(x, 1.2)
		case "orifice":
			got = handcalc.OrificePressure(handcalc.Orifice{FlowM3S: x, AreaM2: 1e-4, Coefficient: 0.7, DensityKgM3: 1.2})
		case "stack":
			got = handcalc.StackPressure(handcalc.HotGas{GasC: x, AmbientC: 20})
		}
		check(t, row, row.Float("expected"), got)
	}
}

func TestSmokeCalculations(t *testing.T) {
	const perFoot = 0.3048
	checkNamed(t, published.Read(t, "handcalc/smoke.csv"), map[string]float64{
		"visibility 8 37000 ft2/lb 6e-6 lb/ft3 (ft)": handcalc.Visibility(8, 37000*6e-6),
		"visibility 8 optical density 0.5 (m)":       handcalc.Visibility(8, 2.303*0.5),
		"soot of 2 at yield 0.015":                   handcalc.Soot(0.015, 2),
		"obscuration 8 %/ft (%/m)":                   handcalc.Obscuration(handcalc.OpticalDensity(8) / perFoot),
	})
}

func TestScaling(t *testing.T) {
	exponents := map[string]float64{
		"heat": handcalc.ScaleHeat, "time": handcalc.ScaleTime, "velocity": handcalc.ScaleVelocity,
		"mass flow": handcalc.ScaleMassFlow, "pressure": handcalc.ScalePressure,
		"extinction": handcalc.ScaleExtinction, "inertia": handcalc.ScaleInertia,
	}
	for _, row := range published.Read(t, "handcalc/scaling.csv").Rows {
		require.Contains(t, exponents, row.Name)
		check(t, row, row.Float("quarter"), handcalc.Scaled(1.0/4, exponents[row.Name]))
		check(t, row, row.Float("sixth"), handcalc.Scaled(1.0/6, exponents[row.Name]))
	}
}

func TestGrowthClasses(t *testing.T) {
	for _, row := range published.Read(t, "handcalc/growth.csv").Rows {
		check(t, row, row.Float("expected"), handcalc.GrowthTime(row.Float("alpha_kw_s2"), 1055))
	}
}

// A correlation outside its range says so.
func TestMQHRefusesAFlashedOverRoom(t *testing.T) {
	hot := lawrenceLivermore
	hot.HRRKW = 6000
	_, err := handcalc.MQH(hot, 600)
	assert.ErrorContains(t, err, "600 K")
}

// The plume's flow meets itself at the flame's tip and grows with height.
func TestPlumeFlowIsSmooth(t *testing.T) {
	tip := handcalc.FlameHeight(poolFire)
	below, above := handcalc.PlumeFlow(poolFire, tip*0.9999), handcalc.PlumeFlow(poolFire, tip*1.0001)
	assert.InEpsilon(t, below, above, 0.002)
	assert.Greater(t, handcalc.PlumeFlow(poolFire, 6), above)
}

// More fuel burned in the room sends the flame higher above its window.
func TestWindowFlameRisesWithBurning(t *testing.T) {
	window := handcalc.Vent{WidthM: 1.5, HeightM: 1.2}
	assert.Greater(t, handcalc.WindowFlame(window, 0.3), handcalc.WindowFlame(window, 0.2))
	assert.InDelta(t, 12.8*0.25-1.2, handcalc.WindowFlame(window, 1.5*0.125), 1e-9, "(1/8)^(2/3) is 1/4")
}
