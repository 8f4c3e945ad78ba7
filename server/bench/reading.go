package bench

import (
	"context"
	"encoding/json"
	"fmt"
	"os/exec"
	"path/filepath"
	"strconv"
	"sync"

	"lintel/content/trial"
)

// The fires on which the reading is judged: seeds that no fit has used. Chosen by us.
const (
	judgedFires = 400
	judgedSeed  = 900_001
)

// Goals of the reading (design figures).
const (
	behindRival   = 0.02
	setHolds      = 0.97
	setSize       = 1.6
	calibrated    = 0.02
	mostSurelyOff = 0.005
	rolesRight    = 0.98
	planesRight   = 0.95
)

// judgedReading burns the fires once a run. The fit is no package that others may
// use, so it is run as the program that it is.
var judgedReading = sync.OnceValues(func() (report trial.Judged, err error) {
	mod, err := inCheckout("go.mod")
	if err != nil {
		return report, err
	}
	cmd := exec.Command("go", "run", "./content/internal/fit", "-judge", "-fires", strconv.Itoa(judgedFires), "-seed", strconv.Itoa(judgedSeed))
	cmd.Dir = filepath.Dir(mod)
	out, err := cmd.Output()
	if err != nil {
		return report, fmt.Errorf("%s: %w", cmd, err)
	}
	return report, json.Unmarshal(out, &report)
})

// ofReading is a figure of the judged reading.
func ofReading(name, unit, goal string, result func(trial.Judged) Result) Figure {
	return Figure{Name: name, Unit: unit, Goal: goal, Slow: true, Measure: func(context.Context) (Result, error) {
		report, err := judgedReading()
		if err != nil {
			return Result{}, err
		}
		r := result(report)
		r.How += fmt.Sprintf("; %d moments of half of %d simulated fires in buildings that nothing was fitted to, the other half fits the rivals", report.Moments, judgedFires)
		return r, nil
	}}
}

const stageGoal = "within 2 points of the best learned rival, above equal weights; the set holds the truth 97 % at mean size 1.6"

var (
	stageExact = ofReading("stage_exact", "share", stageGoal, func(r trial.Judged) Result { return stages(r.Exact, "exact ratings") })
	stageNoisy = ofReading("stage_noisy", "share", stageGoal, func(r trial.Judged) Result { return stages(r.Noisy, "ratings as people give them") })

	calibration = ofReading("calibration", "-", "0.02", func(r trial.Judged) Result {
		return Result{
			Ours: map[string]float64{"exact": r.Exact.Calibration, "noisy": r.Noisy.Calibration}, Holds: max(r.Exact.Calibration, r.Noisy.Calibration) <= calibrated,
			How: "expected calibration error of the top stage, 15 bins",
		}
	})
	confidentWrong = ofReading("confident_wrong", "share", "0.005", func(r trial.Judged) Result {
		return Result{
			Ours: map[string]float64{"exact": r.Exact.ConfidentWrong, "noisy": r.Noisy.ConfidentWrong}, Holds: max(r.Exact.ConfidentWrong, r.Noisy.ConfidentWrong) <= mostSurelyOff,
			How: "moments in which a wrong stage was given more than 0.9",
		}
	})
	roles = ofReading("roles", "share", "0.98", func(r trial.Judged) Result {
		return Result{
			Ours: r.Noisy.Roles, Control: r.Noisy.Controls["roles"], Holds: r.Noisy.Roles >= rolesRight,
			How: "role of each opening looked at, ratings as people give them, the flow not seen at a third; unknown counts as wrong; control: both ways, always",
		}
	})
	plane = ofReading("plane", "share", "0.95", func(r trial.Judged) Result {
		return Result{
			Ours: r.Noisy.Plane, Control: r.Noisy.Controls["plane"], Holds: r.Noisy.Plane >= planesRight,
			How: "neutral plane within a tenth of the height of each opening looked at with flow both ways, ratings as people give them, the plane not seen at a third; control: half way up, always",
		}
	})
)

func stages(r trial.Shares, how string) Result {
	control := map[string]float64{}
	for _, name := range []string{"logistic", "majority", "volume_alone", "equal_weights"} {
		control[name] = r.Controls[name]
	}
	best := max(control["logistic"], control["volume_alone"], control["majority"])
	return Result{
		Ours:    map[string]float64{"top": r.Top, "set_holds": r.SetHolds, "set_size": r.Size},
		Control: control,
		Holds:   r.Top >= best-behindRival && r.Top > control["equal_weights"] && r.SetHolds >= setHolds && r.Size <= setSize,
		How:     "top stage right and the set of stages that is named, " + how,
	}
}
