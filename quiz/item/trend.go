package item

import (
	"lintel/engine"
	"lintel/quiz"
)

// trend says how the fire stands against how it stood a while before: worse where
// it gives more heat, better where it gives less although it has air to spare or
// after water has reached it. A fire that fell because it was starved is no better:
// heat and unburned gas are still inside. Some call that holding steady and some
// worse, so both are taken. All of it is common practice (no source), and where
// more and less begin is changeRatio.
func (j *judgement) trend(reply quiz.Reply) ([]quiz.Reply, float64, error) {
	run := j.walk.run
	then := j.walk.remember(run.TimeS() - j.family.GapS)
	if then == nil {
		return nil, 0, nil
	}
	answer, margin, ok := ratioChange(then.heatW, run.Model().HRR)
	if !ok {
		return nil, 0, nil
	}
	seen, err := j.smokeChanged(then)
	if err != nil || answer != quiz.Same && !seen {
		return nil, 0, err
	}
	said := func(t quiz.Trend) quiz.Reply { r := reply; r.Trend = t; return r }
	switch {
	case answer == quiz.Same:
		return []quiz.Reply{said(quiz.Steady)}, margin, nil
	case answer == quiz.More:
		return []quiz.Reply{said(quiz.Worse)}, margin, nil
	case run.Stage() == engine.AfterKnockDown || run.Regime() == engine.FuelLimited:
		return []quiz.Reply{said(quiz.Better)}, margin, nil
	}
	return []quiz.Reply{said(quiz.Steady), said(quiz.Worse)}, margin, nil
}

// smokeChanged reports whether a shown opening looks otherwise than it did.
func (j *judgement) smokeChanged(then *past) (bool, error) {
	for i, id := range j.family.Show {
		now, err := j.walk.rate(j.walk.run, id)
		if err != nil {
			return false, err
		}
		for _, c := range compared {
			if answer, _, ok := change(c.cue, &then.ratings[i], &now); ok && answer != quiz.Same {
				return true, nil
			}
		}
	}
	return false, nil
}
