package item

import (
	"math"

	"lintel/engine"
	"lintel/engine/cue"
	"lintel/engine/sim"
)

const (
	// tickS is how often the stage is looked at on the way to a moment.
	tickS = 1
	// slackS is less than a step of the fire, and more than its clock can err.
	slackS = 0.01
	// settledS is how long a stage must hold, before and after, to count as
	// wholly settled. Chosen by us: a person takes about as long to look.
	settledS = 16
	// fairSettled is the least share of it that a call may be asked on.
	fairSettled = 0.5
)

// walk is a fire on its way to a moment, with how long its stage and regime
// have held.
type walk struct {
	scene  *engine.Scenario
	run    *sim.Run
	stage  engine.Stage
	regime engine.Regime
	since  float64
	shown  []string // openings whose past is kept
	past   []past
	test   bool // for a test form: what lies near a cut point is asked too
}

// to runs on to a moment in steps short enough to notice a change of stage.
func (w *walk) to(moment float64) error {
	for left := moment - w.run.TimeS(); left > slackS; left = moment - w.run.TimeS() {
		if err := w.run.Advance(math.Min(tickS, left)); err != nil {
			return err
		}
		w.notice()
		w.note()
	}
	return nil
}

func (w *walk) notice() {
	stage, regime := w.run.Stage(), w.run.Regime()
	if stage != w.stage || regime != w.regime {
		w.stage, w.regime, w.since = stage, regime, w.run.TimeS()
	}
}

// settled is how steady the stage and regime are about this moment, from 0 to
// 1: the shorter of how long they have held and go on to hold, over settledS.
func (w *walk) settled() (float64, error) {
	now := w.run.TimeS()
	held := math.Min(settledS, now-w.since)
	if held < fairSettled*settledS {
		return held / settledS, nil // no need to look ahead
	}
	ahead := walk{scene: w.scene, run: w.run.Clone(), stage: w.stage, regime: w.regime}
	for t := now; t < now+held; t += tickS {
		if err := ahead.to(t + tickS); err != nil {
			return 0, err
		}
		if ahead.stage != w.stage || ahead.regime != w.regime {
			return (t - now) / settledS, nil
		}
	}
	return held / settledS, nil
}

// rate is the exact rating of an opening of the scene, in a run of it.
func (w *walk) rate(run *sim.Run, opening string) (cue.Rating, error) {
	for i := range w.scene.Openings {
		if w.scene.Openings[i].ID == opening {
			return run.Rating(i), nil
		}
	}
	return cue.Rating{}, engine.Bad("opening", "is "+opening+", which the scene has not", "name an opening of the scene")
}
