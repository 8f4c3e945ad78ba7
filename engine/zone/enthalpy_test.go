package zone_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"lintel/engine/internal/published"
	"lintel/engine/zone"
)

// The enthalpy of air and of vapour follows the published polynomials; that of one
// heat capacity for all temperatures, as a control, does not.
func TestEnthalpyOfHotGas(t *testing.T) {
	const stated, constant = 298.15, 1012.0
	worst := 0.0
	for _, row := range published.Read(t, "fire/gas_enthalpy.csv").Rows {
		temp := row.Float("temp_k")
		air, vapour := row.Float("air"), row.Float("vapour")
		assert.InDelta(t, air, zone.DryHeat(temp)-zone.DryHeat(stated), row.Allowed(air), "air at %g K", temp)
		assert.InDelta(t, vapour, zone.VapourHeat(temp)-zone.VapourHeat(stated), row.Allowed(vapour), "vapour at %g K", temp)
		worst = max(worst, 1-constant*(temp-stated)/air)
	}
	assert.Greater(t, worst, 0.1)
}

// The temperature of a layer gives back the enthalpy that it was made of, dry or
// moist.
func TestTemperatureOfMoistGas(t *testing.T) {
	for _, temp := range []float64{260, 298.15, 600, 1500} {
		for _, share := range []float64{0, 0.1, 1} {
			gas := zone.Layer{Mass: 2}
			gas.Of[zone.Water] = 2 * share
			gas.Heat = 2 * ((1-share)*zone.DryHeat(temp) + share*zone.VapourHeat(temp))
			assert.InEpsilon(t, temp, gas.Temp(), 1e-12)
		}
	}
}
