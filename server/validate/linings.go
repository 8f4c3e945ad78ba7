package validate

import (
	"lintel/engine"
	"lintel/engine/sim"
)

// lightGypsum is a board that only these experiments name: an input of theirs,
// not content of the app.
const lightGypsum = "validation_light_gypsum"

// withLinings adds the linings that the experiments had and content has not.
func withLinings(library sim.Library) sim.Library {
	linings := append([]engine.Lining(nil), library.Materials.Linings...)
	library.Materials.Linings = append(linings, engine.Lining{
		ID: lightGypsum, Name: "light gypsum board", ConductivityWMK: 0.16, DensityKgM3: 480, HeatCapacityJKgK: 1000, ThicknessM: 0.025,
		Source: "CFAST UL_NIJ_Houses Single_Story_Gas_1.in",
	})
	return library
}
