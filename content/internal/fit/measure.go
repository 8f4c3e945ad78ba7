package main

import (
	"math"

	"lintel/content/internal/measured"
	"lintel/engine"
	"lintel/engine/infer"
)

func measure(rules []infer.Rule, m model, d data, moments []moment) measured.File {
	var out measured.File
	p := measured.Priors{Stage: map[engine.Stage]float64{}, Hazards: map[engine.Hazard]float64{}, Flag: map[engine.Hazard]float64{}}
	for c, stage := range trueStages {
		p.Stage[stage] = round(m.stage.bias[c])
	}
	p.Regime = round(m.regime.bias[1] - m.regime.bias[0])
	for h, hazard := range engine.Hazards {
		p.Hazards[hazard] = round(m.hazard[h].bias[1] - m.hazard[h].bias[0])
	}
	p.Answers = answersOf(moments)
	for i := range rules {
		out.Rules = append(out.Rules, m.rule(&rules[i], i, d.test))
	}
	out.Priors = p
	return out
}

// rule counts how often what one rule speaks for was true, on exact readings of
// the fires that did not fit its weight.
func (m *model) rule(r *infer.Rule, index int, s sample) measured.Rule {
	claim, holds := claimOf(r)
	out := measured.Rule{Rule: r.ID, Claim: claim}
	if holds == nil && r.Nearness != 0 {
		out = seatRule(r, s)
	} else {
		count(&out, index, holds, s)
	}
	out.Stage, out.Hazards = map[engine.Stage]float64{}, map[engine.Hazard]float64{}
	m.weights(&out, index)
	return out
}

// count fills in how often a rule's claim held when it fired, and at all.
func count(out *measured.Rule, index int, holds func(*moment) bool, s sample) {
	exact, base := 0, 0
	for i := range s.examples {
		e := &s.examples[i]
		if !e.exact || holds == nil {
			continue
		}
		truth := holds(&s.moments[e.moment])
		exact++
		if truth {
			base++
		}
		if indexOf(e.rules, index) >= 0 {
			out.Fires++
			if truth {
				out.Hits++
			}
		}
	}
	out.Share, out.Base = ratio(out.Hits, out.Fires), ratio(base, exact)
}

func (m *model) weights(out *measured.Rule, index int) {
	for c, stage := range trueStages {
		w := round(m.stage.weight[index][c])
		if m.stage.sign[index][c] == 0 {
			w = math.Round(10*w) / 10 // a lean is no finer than that, and the phone carries every digit
		}
		if w != 0 {
			out.Stage[stage] = w
		}
	}
	out.Regime = round(m.regime.weight[index][1])
	for h, hazard := range engine.Hazards {
		if w := round(m.hazard[h].weight[index][1]); w != 0 {
			out.Hazards[hazard] = w
		}
	}
}

// claimOf says what counts as a hit for a rule: the first of stage, regime,
// hazard or seat that it speaks on.
func claimOf(r *infer.Rule) (string, func(*moment) bool) {
	switch {
	case len(r.Supports) > 0:
		return "the stage is one that it supports", func(m *moment) bool { return indexOf(r.Supports, m.Stage) >= 0 }
	case r.Regime != "":
		return "the regime is the one that it names", func(m *moment) bool { return m.Regime == r.Regime }
	case len(r.Hazards) > 0:
		return "one of its hazards comes, or would on opening up", func(m *moment) bool {
			for h, hazard := range engine.Hazards {
				if m.near(h) && indexOf(r.Hazards, hazard) >= 0 {
					return true
				}
			}
			return false
		}
	case len(r.Opposes) > 0:
		return "the stage is none that it opposes", func(m *moment) bool { return indexOf(r.Opposes, m.Stage) < 0 }
	}
	return "nothing that a single count would test", nil
}

func ratio(a, b int) float64 {
	if b == 0 {
		return 0
	}
	return math.Round(1000*float64(a)/float64(b)) / 1000
}

func round(x float64) float64 { return math.Round(x*1000) / 1000 }
