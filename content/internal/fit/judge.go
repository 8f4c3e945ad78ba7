package main

import (
	"encoding/json"
	"math"
	"os"
	"slices"
	"strconv"

	"lintel/content"
	"lintel/content/trial"
	"lintel/engine"
	"lintel/engine/infer"
)

// judge holds the shipped reader against its rivals.
func judge(moments []moment, fires int) error {
	set := content.Rules()
	d := examplesOf(set, moments)
	controls, err := newControls(d.fit)
	if err != nil {
		return err
	}
	report := trial.Judged{Fires: fires, Moments: len(d.test.examples) / 2}
	report.Exact = judgeOn(set, d, controls, true)
	report.Noisy = judgeOn(set, d, controls, false)
	return json.NewEncoder(os.Stdout).Encode(report)
}

func judgeOn(set *infer.Set, d data, controls map[string]caller, exact bool) trial.Shares {
	var s scores
	right := map[string]int{}
	for i := range d.test.examples {
		e := &d.test.examples[i]
		if e.exact != exact {
			continue
		}
		m := &d.moments[e.moment]
		s.add(infer.Read(set, e.readings), m)
		for name, call := range controls {
			if call(e.readings) == m.Stage {
				right[name]++
			}
		}
	}
	v := s.verdict()
	for name := range controls {
		v.Controls[name] = ratio(right[name], s.stage.n)
	}
	return v
}

// bins of the calibration error, by the probability of the top answer (design
// figure).
const bins = 15

// surely is the probability above which a wrong answer is a confident one (design
// figure), and nearPlane how far off a plane may be, of the opening's height.
const (
	surely    = 0.9
	nearPlane = 0.1
)

// scores adds up what the reader said.
type scores struct {
	stage                     tally
	n, right                  [bins]int
	sum                       [bins]float64
	confidentWrong            int
	openings, roles, bothWays int
	planes, plane, middle     int
}

func (s *scores) add(f engine.Finding, m *moment) {
	s.stage.add(f, m)
	top, most := engine.Undetermined, f.Stage[engine.Undetermined]
	for _, stage := range trueStages {
		if f.Stage[stage] > most {
			top, most = stage, f.Stage[stage]
		}
	}
	bin := min(int(bins*most), bins-1)
	s.n[bin]++
	s.sum[bin] += most
	if top == m.Stage {
		s.right[bin]++
	} else if most > surely {
		s.confidentWrong++
	}
	for i := range m.Now.Openings {
		s.opening(f, &m.Now.Openings[i])
	}
}

// opening judges what was said of an opening that somebody looked at, whatever they
// could tell of it.
func (s *scores) opening(f engine.Finding, truth *engine.Reading) {
	said, looked := f.Openings[truth.ID]
	if !looked || truth.Flow == "" {
		return
	}
	s.openings++
	if string(said.Role) == string(truth.Flow) {
		s.roles++
	}
	if truth.Flow == engine.FlowBoth {
		s.bothWays++
	}
	if truth.NeutralPlane == nil || truth.Flow != engine.FlowBoth {
		return
	}
	s.planes++
	if said.NeutralPlane != nil && math.Abs(*said.NeutralPlane-*truth.NeutralPlane) <= nearPlane {
		s.plane++
	}
	if math.Abs(0.5-*truth.NeutralPlane) <= nearPlane {
		s.middle++
	}
}

func (s *scores) verdict() trial.Shares {
	off := 0.0
	for b := range bins {
		off += math.Abs(s.sum[b]-float64(s.right[b])) / float64(s.stage.n)
	}
	return trial.Shares{
		Top: ratio(s.stage.top, s.stage.n), SetHolds: ratio(s.stage.held, s.stage.n), Size: ratio(s.stage.size, s.stage.n),
		Calibration: round(off), ConfidentWrong: ratio(s.confidentWrong, s.stage.n),
		Roles: ratio(s.roles, s.openings), Plane: ratio(s.plane, s.planes),
		Controls: map[string]float64{"roles": ratio(s.bothWays, s.openings), "plane": ratio(s.middle, s.planes)},
	}
}

// caller is who names a stage.
type caller func(engine.Readings) engine.Stage

// newControls are the rivals: a free logistic reader, the commonest stage, the
// commonest by volume alone, and our rules with a like weight each.
func newControls(fit sample) (map[string]caller, error) {
	rules := slices.Clone(content.RuleList())
	for i := range rules {
		rules[i].Confidence = infer.Middle
	}
	even, err := infer.NewSet(rules, nil, infer.Priors{Cover: 1})
	if err != nil {
		return nil, err
	}
	return map[string]caller{
		"logistic":      newRival(fit).call,
		"majority":      commonest(fit, func(engine.Readings) string { return "" }),
		"volume_alone":  commonest(fit, mostVolume),
		"equal_weights": func(r engine.Readings) engine.Stage { return topOf(infer.Read(even, r)) },
	}, nil
}

func topOf(f engine.Finding) engine.Stage {
	best := engine.Undetermined
	for _, stage := range engine.Stages {
		if f.Stage[stage] > f.Stage[best] {
			best = stage
		}
	}
	return best
}

// commonest is who names the stage that was commonest where the same was seen.
func commonest(fit sample, seen func(engine.Readings) string) caller {
	counts := map[string]map[engine.Stage]int{}
	for i := range fit.examples {
		e := &fit.examples[i]
		what := seen(e.readings)
		if counts[what] == nil {
			counts[what] = map[engine.Stage]int{}
		}
		counts[what][fit.moments[e.moment].Stage]++
	}
	return func(r engine.Readings) engine.Stage {
		best, most := trueStages[0], 0
		for _, stage := range trueStages {
			if n := counts[seen(r)][stage]; n > most {
				best, most = stage, n
			}
		}
		return best
	}
}

func mostVolume(r engine.Readings) string {
	most := -1
	for _, o := range r.Looks[len(r.Looks)-1].Openings {
		if o.Volume != nil {
			most = max(most, *o.Volume)
		}
	}
	return strconv.Itoa(most)
}
