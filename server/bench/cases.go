package bench

import (
	"context"
	"fmt"
	"os"

	"lintel/content"
	"lintel/content/trial"
)

// casesFigure holds the reader against coded moments of real fires and
// full-scale tests. Controls: flag every case, and flag a density of 3 or more.
var casesFigure = Figure{
	Name: "cases", Unit: "share of hostile less share of benign flagged", Goal: "above both controls over every denominator",
	Measure: func(context.Context) (Result, error) {
		path, err := inCheckout("testdata/cases/cases.json")
		if err != nil {
			return Result{}, err
		}
		text, err := os.ReadFile(path)
		if err != nil {
			return Result{}, err
		}
		file, err := trial.Parse(text)
		if err != nil {
			return Result{}, err
		}
		report := trial.Judge(content.Rules(), file)
		ours, control, how := map[string]float64{}, map[string]float64{}, ""
		for _, g := range report.Groups() {
			ours[g.Name] = g.Ours.Gain()
			control[g.Name] = max(g.Always.Gain(), g.Density.Gain())
			how += fmt.Sprintf("%s: hostile flagged %s, benign flagged %s. ", g.Name, g.Ours.Hostile, g.Ours.Benign)
		}
		return Result{Ours: ours, Control: control, Holds: report.Better(), How: how + "Control: the better of flagging all and of density 3 or more"}, nil
	},
}
