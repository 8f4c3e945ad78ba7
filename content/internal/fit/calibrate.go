package main

import (
	"math"
	"slices"
	"sort"

	"lintel/content"
	"lintel/content/internal/measured"
	"lintel/engine"
	"lintel/engine/infer"
)

// coverGoal is the share of moments whose true stage the returned set must hold
// (design figure). The covering probability is the least that reaches it.
// shorterGoal is printed beside it: what a set would be worth that is wrong in one
// moment of ten.
const (
	coverGoal   = 0.97
	shorterGoal = 0.90
)

// calibrate reads every test moment with the fitted weights, and sets from what
// comes out the covering probability and the thresholds of the hazards' flags. It
// returns the covering probability of the shorter goal.
func calibrate(out *measured.File, d data) (shorter float64, err error) {
	out.Priors.Cover = 0 // the set is then the likeliest stage and what is not told apart from it
	set, err := infer.NewSet(content.RuleList(), out.Weights(), out.Priors.Reader())
	if err != nil {
		return 0, err
	}
	var need []float64
	var chances [4][]chance
	for i := range d.test.examples {
		e := &d.test.examples[i]
		m := &d.moments[e.moment]
		finding := infer.Read(set, e.readings)
		need = append(need, likelier(finding, m.Stage))
		for h := range finding.Hazards {
			if !e.exact && m.asks(h) {
				chances[h] = append(chances[h], chance{seenFor(finding.Hazards[h]), m.near(h)})
			}
		}
	}
	sort.Float64s(need)
	out.Priors.Cover = coverFor(need, coverGoal)
	for h, hazard := range engine.Hazards {
		out.Priors.Flag[hazard] = threshold(chances[h])
	}
	return coverFor(need, shorterGoal), nil
}

// seenFor is a hazard's probability where a condition for it was seen, without which
// it is never flagged, and else 0. While no threshold is set, flagged says just that.
func seenFor(h engine.HazardFinding) float64 {
	if !h.Flagged {
		return 0
	}
	return h.Probability
}

// coverFor is the least covering probability that holds a share of the truths,
// given in rising order what each of them needs.
func coverFor(need []float64, share float64) float64 {
	return math.Ceil(100*need[int(share*float64(len(need)))]) / 100
}

// chance is a hazard's probability as read, and whether it was true.
type chance struct {
	p     float64
	truth bool
}

// threshold is a probability that parts moments with a hazard from those without as
// well as any does (Youden's hit share less false-alarm share), on fires that did
// not fit the weights, seen as people see. The best of few moments is chance: of all
// that come within one standard error of it the lowest is taken (the rule of one
// standard error, Breiman et al. 1984), as a hazard missed costs more than a false
// alarm; but no more than half of what the best tells is given up for it, and none
// is taken that does not tell, where any does.
func threshold(list []chance) float64 {
	cuts, with := cutsOf(list)
	without := len(list) - with
	if able := slices.DeleteFunc(slices.Clone(cuts), func(c cut) bool { return !c.tells(with, without) }); len(able) > 0 {
		cuts = able
	}
	best := cut{p: 0.5}
	for _, c := range cuts {
		if c.gain(with, without) > best.gain(with, without) {
			best = c
		}
	}
	gain := best.gain(with, without)
	least := math.Max(gain/2, gain-best.error(with, without))
	at := best.p
	for _, c := range cuts {
		if c.p > 0 && c.gain(with, without) >= least {
			at = math.Min(at, c.p)
		}
	}
	return math.Floor(1000*at) / 1000
}

// cut is what flagging from a probability up would hit, and alarm falsely.
type cut struct {
	p            float64
	hits, alarms int
}

// cutsOf is every cut that a list allows, highest first, and how many were true.
func cutsOf(list []chance) (cuts []cut, with int) {
	sort.Slice(list, func(i, j int) bool { return list[i].p > list[j].p })
	now := cut{}
	for i, x := range list {
		if x.truth {
			now.hits++
		} else {
			now.alarms++
		}
		if i+1 < len(list) && list[i+1].p == x.p {
			continue
		}
		now.p = x.p
		cuts = append(cuts, now)
	}
	return cuts, now.hits
}

func (c cut) gain(with, without int) float64 { return ratio(c.hits, with) - ratio(c.alarms, without) }

// telling is how many times as often a flag must be raised with a hazard as without
// it: one that is raised nearly as often without teaches nobody to look. Chosen by us.
const telling = 1.5

// tells reports whether a flag from this cut does so.
func (c cut) tells(with, without int) bool {
	return c.p > 0 && ratio(c.hits, with) >= telling*ratio(c.alarms, without)
}

// error is the standard error of the gain, two shares of moments counted apart.
func (c cut) error(with, without int) float64 {
	spread := func(of, n int) float64 { return ratio(of, n) * (1 - ratio(of, n)) / math.Max(1, float64(n)) }
	return math.Sqrt(spread(c.hits, with) + spread(c.alarms, without))
}

// likelier is the probability of all stages likelier than the true one, the
// undetermined part laid evenly over them, as infer's set counts it; 0 where the
// set holds the truth whatever it must cover.
func likelier(f engine.Finding, truth engine.Stage) float64 {
	if indexOf(f.Set, truth) >= 0 {
		return 0
	}
	even := f.Stage[engine.Undetermined] / float64(len(trueStages))
	sum := 0.0
	for _, stage := range trueStages {
		if stage != truth && f.Stage[stage] > f.Stage[truth] {
			sum += f.Stage[stage] + even
		}
	}
	return sum
}
