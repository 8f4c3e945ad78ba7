package zone

import (
	"math"

	"lintel/engine"
	"lintel/engine/internal/num"
)

// burnerGas is what a gas burner burns: methane, 50 MJ/kg, with the radiant
// fraction of natural gas flames of this size, 0.2 to 0.27 (from memory, to be
// confirmed); soot 0.001 (FDS and CFAST inputs).
var burnerGas = engine.FuelKind{
	ID: engine.GasBurner, Name: "gas burner", HeatMJKg: burnerHeat / 1e6, GasificationMJKg: 1, RadiantFraction: 0.22,
	SootYield: 0.001, COYield: 0.0005,
}

// newFire makes a fire of a scenario. A solid package without an ignition time is
// never lit by hand; it may still catch from the radiation of the room.
func newFire(in engine.Fuel, index map[string]int, materials engine.Materials, where string) (Fire, error) {
	f := Fire{Room: index[in.In], Faces: faces(in.Place), Base: valueOr(in.BaseM, 0), Ignite: math.NaN()}
	if in.Kind == engine.GasBurner {
		f.Kind, f.Burner, f.Ignite = burnerGas, true, in.HRRKW[0][0]
		most := 0.0
		for _, point := range in.HRRKW {
			f.Power = append(f.Power, [2]float64{point[0], point[1] * 1000})
			most = num.Max(most, point[1])
		}
		f.Diameter = valueOr(in.DiameterM, burnerWidth(most))
		return f, nil
	}
	kind, ok := findFuel(materials.Fuels, in.Kind)
	if !ok {
		return f, engine.Bad(where+".kind", "is "+`"`+in.Kind+`"`+", which is not in the library", "use "+engine.GasBurner+" or a fuel of content/fuels")
	}
	f.Kind = kind
	if in.IgniteS != nil {
		f.Ignite = *in.IgniteS
	}
	f.load(valueOr(in.MassKg, 0))
	f.Diameter = valueOr(in.DiameterM, f.Diameter)
	return f, nil
}

// load gives a package its mass and size: as deep as it is wide.
func (f *Fire) load(mass float64) {
	f.Mass0, f.Mass = mass, mass
	side := num.Cbrt(mass / floor(f.Kind.BulkDensityKgM3, 1))
	f.Diameter = num.Clamp(1.13*side, 0.05, 3)
	f.skin = 5 * side * side
}

// burnerWidth is a usual burner for a power in kW: Q* of about 1 (chosen by us).
func burnerWidth(kW float64) float64 {
	return num.Clamp(num.Pow(floor(kW, 0.01)/1110, 0.4), 0.05, 3)
}
