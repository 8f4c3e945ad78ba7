package validate

import (
	"fmt"
	"time"

	"lintel/engine/sim"
)

// study is one series: the file of its rows and how to run it.
type study struct {
	file string
	run  func(library sim.Library, data *table) (Series, error)
}

// studies lists every series in the order of the report.
var studies = []study{
	{"steckler_1982.csv", steadyRooms},
	{"fsri_compartment_open_steady.csv", openCells},
	{"fsri_compartment_closed.csv", closedCells},
	{"bryant_doorway_velocity.csv", doorwayInflow},
	{"nbs_1room_furniture.csv", furnitureRoom},
	{"nbs_multiroom_100kW_layers.csv", threeRooms},
	{"nist_vent_study_layers.csv", smallBox},
	{"ul_nij_ranch_flowpath.csv", ranchHouses},
	{"ul_nij_twostory_pressures.csv", twoStoreyHouses},
	{"nist_backdraft_states.csv", readyStates},
}

// Run compares the fire model with every published series, whose rows it looks
// for in testdata/validation from the working folder upward.
func Run(library sim.Library) (Report, error) {
	folder, err := DataFolder()
	if err != nil {
		return Report{}, err
	}
	return RunFrom(folder, "", library)
}

// RunFrom is Run with the rows of a given folder, of one series where it is
// named as its file without .csv.
func RunFrom(folder, series string, library sim.Library) (Report, error) {
	var report Report
	began := time.Now()
	library = withLinings(library)
	for _, study := range studies {
		if series != "" && study.file != series+".csv" {
			continue
		}
		data, err := readTable(folder, study.file)
		if err != nil {
			return report, err
		}
		series, err := study.run(library, data)
		if err != nil {
			return report, err
		}
		report.Series = append(report.Series, series)
	}
	if len(report.Series) == 0 {
		return report, fmt.Errorf("no series is called %q: name a file of testdata/validation without .csv", series)
	}
	report.Took = time.Since(began)
	return report, nil
}
