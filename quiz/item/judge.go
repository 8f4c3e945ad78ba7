package item

import (
	"math"

	"lintel/engine"
	"lintel/engine/cue"
	"lintel/engine/sim"
	"lintel/quiz"
)

// judge works out the truth of this moment, or nil where the scene is not about
// its lesson now or some answer lies too near another to be fair.
func (f *Family) judge(w *walk) (*Truth, error) {
	if !f.shows(w) || f.Kind == quiz.CallStage && !plain(w.run.Stage(), w.run.Regime()) {
		return nil, nil
	}
	before, told, err := f.before(w)
	if err != nil || !told {
		return nil, err
	}
	j := judgement{family: f, walk: w, margin: 1}
	for _, ask := range f.Asks {
		accept, margin, err := j.ask(ask)
		if err != nil {
			return nil, err
		}
		if accept == nil || margin < ask.least() && !w.test {
			return nil, nil
		}
		if own, err := j.moved(ask, accept[0]); err != nil || !own {
			return nil, err
		}
		j.accept = append(j.accept, accept)
		j.margin = math.Min(j.margin, margin)
	}
	truth := truthAt(w.run, j.accept, j.margin)
	truth.before = before
	return truth, nil
}

// plain refuses the moments at which stage and regime, each with its own lag,
// say two things of one fire: nobody could call both.
func plain(stage engine.Stage, regime engine.Regime) bool {
	switch stage {
	case engine.Decay:
		return regime == engine.FuelLimited
	case engine.VentilationDecay:
		return regime == engine.VentilationLimited
	}
	return true
}

// least is the margin below which an answer is not asked for.
func (a Ask) least() float64 {
	switch {
	case a.Kind == quiz.AskStage, a.Kind == quiz.AskRegime:
		return fairSettled
	case a.Cue == engine.CueDarkness && a.Kind == quiz.AskLevel:
		return fairDarkness
	}
	return fairMargin
}

// judgement is one moment being worked through, ask by ask.
type judgement struct {
	family *Family
	walk   *walk
	after  *sim.Run // the same fire some time after the move, once it is needed
	accept [][]quiz.Reply
	margin float64
}

// ask returns every right reply and how far it stands from a wrong one, or nil
// where there is nothing to ask about.
func (j *judgement) ask(a Ask) ([]quiz.Reply, float64, error) {
	reply := quiz.Reply{Ask: a.ID()}
	switch a.Kind {
	case quiz.AskStage, quiz.AskRegime:
		settled, err := j.walk.settled()
		if a.Kind == quiz.AskStage {
			reply.Stage = j.walk.run.Stage()
		} else {
			reply.Regime = j.walk.run.Regime()
		}
		return []quiz.Reply{reply}, settled, err
	case quiz.AskChange:
		return j.change(a, reply)
	case quiz.AskOpening:
		return j.nearest(a, reply)
	case quiz.AskTrend:
		return j.trend(reply)
	}
	run, err := j.askedRun()
	if err != nil {
		return nil, 0, err
	}
	rating, err := j.walk.rate(run, a.Opening)
	if err != nil {
		return nil, 0, err
	}
	return rated(a, reply, &rating)
}

// rated answers an ask about one opening from its rating.
func rated(a Ask, reply quiz.Reply, r *cue.Rating) ([]quiz.Reply, float64, error) {
	switch a.Kind {
	case quiz.AskFlow:
		reply.Flow = r.Flow
		return []quiz.Reply{reply}, r.Margins.Flow, nil
	case quiz.AskPlane:
		plane := planeOf(r)
		if math.IsNaN(plane) {
			return nil, 0, nil
		}
		reply.Plane = &plane
		return []quiz.Reply{reply}, r.Margins.Flow, nil
	}
	level, known := levelOf(a.Cue, r)
	if !known {
		return nil, 0, engine.Bad("ask "+a.ID(), "has no level", "ask for "+engine.OneOf(engine.OrdinalCues))
	}
	reply.Level = &level
	return []quiz.Reply{reply}, r.Margins.Of(a.Cue), nil
}

// change compares an opening now and some time after the move.
func (j *judgement) change(a Ask, reply quiz.Reply) ([]quiz.Reply, float64, error) {
	before, err := j.walk.rate(j.walk.run, a.Opening)
	if err != nil {
		return nil, 0, err
	}
	moved, err := j.askedRun()
	if err != nil {
		return nil, 0, err
	}
	after, err := j.walk.rate(moved, a.Opening)
	if err != nil {
		return nil, 0, err
	}
	answer, margin, ok := change(a.Cue, &before, &after)
	if !ok {
		return nil, 0, nil
	}
	reply.Change = answer
	return []quiz.Reply{reply}, margin, nil
}

// moved reports whether the first change asked for is the work of the move: a
// twin of the fire, left alone for as long, must not show it too. What is asked
// besides may be the fire's own doing.
func (j *judgement) moved(a Ask, answer quiz.Reply) (bool, error) {
	if len(j.accept) > 0 || a.Kind != quiz.AskChange || answer.Change == quiz.Same {
		return true, nil
	}
	twin := j.walk.run.Clone()
	if err := twin.Advance(j.family.Move.AfterS); err != nil {
		return false, err
	}
	before, err := j.walk.rate(j.walk.run, a.Opening)
	if err != nil {
		return false, err
	}
	alone, err := j.walk.rate(twin, a.Opening)
	if err != nil {
		return false, err
	}
	itself, _, _ := change(a.Cue, &before, &alone)
	return itself != answer.Change, nil
}

// askedRun is the fire that the asks are about: as it is now, or for a
// prediction as it will be some time after the move.
func (j *judgement) askedRun() (*sim.Run, error) {
	if j.family.Move == nil {
		return j.walk.run, nil
	}
	if j.after == nil {
		run := j.walk.run.Clone()
		if err := run.Apply(j.family.Move.Move); err != nil {
			return nil, err
		}
		if err := run.Advance(j.family.Move.AfterS); err != nil {
			return nil, err
		}
		j.after = run
	}
	return j.after, nil
}
