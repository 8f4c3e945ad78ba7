package item

import (
	"math/rand/v2"

	"lintel/engine"
	"lintel/engine/sim"
	"lintel/quiz"
)

const (
	// holdsS is how long a condition must hold to be there to report, s, and
	// leadInS how much of the scene is played at least before it does. Chosen by
	// us: a look takes a few seconds.
	holdsS  = 4
	leadInS = 8
)

// report plays a scene through the family's window and finds the moment at which
// what is to be reported first holds, and the event that follows. Where it never
// holds there is nothing to report, which is a fair answer too.
func (f *Family) report(scene engine.Scenario, draw *rand.Rand, lib sim.Library, test bool) (*made, error) {
	run, err := sim.New(scene, lib)
	if err != nil {
		return nil, err
	}
	w := &walk{scene: &scene, run: run, test: test}
	last := f.Moment.ToS + f.Watch.LastS
	held, event := -1.0, -1.0
	for t := 0.0; t < last && event < 0; t += tickS {
		if held >= 0 && t > held+f.Watch.LastS {
			break // what comes later is not played
		}
		if err := w.to(t + tickS); err != nil {
			return nil, err
		}
		switch holds := f.holds(w); {
		case held >= 0 && w.run.TimeS()-held >= holdsS:
			event = f.event(w)
		case !holds:
			held = -1
		case held < 0:
			held = w.run.TimeS()
		}
	}
	from := f.Moment.FromS + float64(draw.IntN(int(f.Moment.ToS-f.Moment.FromS)+1))
	if held >= 0 {
		early := leadInS + draw.IntN(max(1, int(f.Watch.LastS/2)-leadInS))
		from = held - float64(early)
		if from < f.Moment.FromS || from > f.Moment.ToS {
			return nil, nil // it came before the window, or after it
		}
	}
	return f.reported(scene, lib, from, held, event)
}

// reported makes the truth of what is played from a moment on.
func (f *Family) reported(scene engine.Scenario, lib sim.Library, from, held, event float64) (*made, error) {
	watch := quiz.Span{FromS: from, ToS: from + f.Watch.LastS}
	reply := quiz.Reply{Ask: f.Asks[0].ID(), Quiet: held < 0}
	if held >= 0 {
		reply.AtS = &held
	}
	if event >= 0 && event <= watch.ToS {
		reply.EventS = &event
	}
	run, err := sim.New(scene, lib)
	if err != nil {
		return nil, err
	}
	w := &walk{scene: &scene, run: run}
	if err := w.to(from); err != nil {
		return nil, err
	}
	if f.holds(w) || !f.shows(w) {
		return nil, nil
	}
	truth := truthAt(w.run, [][]quiz.Reply{{reply}}, 1)
	return &made{scene: scene, moment: from, truth: truth, watch: &watch}, nil
}

// holds reports whether everything that is to be reported is there.
func (f *Family) holds(w *walk) bool {
	for _, need := range f.Watch.For {
		if !need.met(w) {
			return false
		}
	}
	return true
}

// event is the time at which what the report should come before has come, or -1.
func (f *Family) event(w *walk) float64 {
	for _, kind := range f.Watch.Before {
		if kind == string(w.run.Stage()) {
			return w.run.TimeS()
		}
		for _, e := range w.run.Events() {
			if e.Kind == kind {
				return e.TS
			}
		}
	}
	return -1
}
