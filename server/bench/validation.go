package bench

import (
	"context"
	"errors"
	"sync"

	"lintel/content"
	"lintel/server/validate"
)

// fullModel runs every published series through the fire once a run.
var fullModel = sync.OnceValues(func() (validate.Report, error) { return validate.Run(content.Library()) })

// published turns one of the validation report's figures into one of ours.
func published(figure func(validate.Report) validate.Figure) func(context.Context) (Result, error) {
	return func(context.Context) (Result, error) {
		report, err := fullModel()
		if err != nil {
			return Result{}, err
		}
		f := figure(report)
		if points, counted := f.Ours["points"]; counted && points == 0 {
			return Result{}, errors.New("no published series of it is left that was not in view while the model was set")
		}
		return Result{Ours: f.Ours, Control: f.Control, Holds: f.Holds, How: f.How}, nil
	}
}

var layerTemp = Figure{
	Name: "layer_temp", Unit: "-", Goal: "untuned series: scatter at most 35 %, bias 0.85 to 1.15", Slow: true,
	Measure: published(validate.Report.LayerTemp),
}

var layerDepth = Figure{
	Name: "layer_depth", Unit: "-", Goal: "untuned series: scatter at most 19 %, bias 0.85 to 1.15", Slow: true,
	Measure: published(validate.Report.LayerDepth),
}

var smallBox = Figure{
	Name: "small_box", Unit: "share", Goal: "every direction right, temperature rise within 25 %", Slow: true,
	Measure: published(validate.Report.SmallBox),
}
