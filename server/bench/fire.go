package bench

import (
	"context"
	"fmt"
	"time"

	"lintel/content"
	"lintel/engine/sim"
	"lintel/engine/sim/gauge"
)

const (
	speedRounds = 5
	speedRooms  = 6
	speedFireS  = 600.0 // of fire in a round of ours
	fastFireS   = 0.02  // of fire in a round of the control
	speedGoal   = 4000.0
)

// fireSpeed is the fire on one core, six compartments with openings being moved.
// Control: the same equations stepped explicitly, in steps small enough to hold.
var fireSpeed = Figure{
	Name: "fire_speed", Unit: "times real time", Goal: "4,000 (8,000 in the long term)",
	Measure: func(context.Context) (Result, error) {
		var ours, control []float64
		for range speedRounds {
			fast, err := timesReal()
			if err != nil {
				return Result{}, err
			}
			slow, err := timesRealExplicit()
			if err != nil {
				return Result{}, err
			}
			ours, control = append(ours, fast), append(control, slow)
		}
		one, err := timesRealOf(1)
		if err != nil {
			return Result{}, err
		}
		twelve, err := timesRealOf(12)
		if err != nil {
			return Result{}, err
		}
		return Result{
			Ours: median(ours), Control: median(control), Holds: median(ours) >= speedGoal,
			How: fmt.Sprintf("%.0f s of %d compartments with openings moved, one core, median of %d (1 compartment %.0f, 12 compartments %.0f); control: the same equations in explicit steps of %g s",
				speedFireS, speedRooms, speedRounds, one, twelve, gauge.ExplicitStepS),
		}, nil
	},
}

func timesReal() (float64, error) { return timesRealOf(speedRooms) }

func timesRealOf(rooms int) (float64, error) {
	run, err := sim.New(gauge.House(rooms, speedFireS+30), content.Library())
	if err != nil {
		return 0, err
	}
	if err := run.Advance(30); err != nil {
		return 0, err
	}
	began := time.Now()
	if err := run.Advance(speedFireS); err != nil {
		return 0, err
	}
	return speedFireS / time.Since(began).Seconds(), nil
}

func timesRealExplicit() (float64, error) {
	model, err := gauge.Explicit(gauge.House(speedRooms, speedFireS), content.Materials(), 0.1)
	if err != nil {
		return 0, err
	}
	steps := int(fastFireS / gauge.ExplicitStepS)
	began := time.Now()
	for range steps {
		model.StepExplicit(gauge.ExplicitStepS)
	}
	return float64(steps) * gauge.ExplicitStepS / time.Since(began).Seconds(), nil
}
