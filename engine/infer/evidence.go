package infer

import (
	"math"

	"lintel/engine/internal/num"
)

// verdict is what the rules make of one scene.
type verdict struct {
	fired    []bool   // by rule, at any opening
	at       [][]bool // by rule (of opening scope) and opening
	stage    [stageCount]float64
	regime   float64
	hazard   [hazardCount]float64
	evidence float64
}

func (set *Set) newVerdict(openings int) *verdict {
	v := &verdict{fired: make([]bool, len(set.rules)), at: make([][]bool, len(set.rules))}
	for i := range set.rules {
		if set.rules[i].rule.At == AtOpening {
			v.at[i] = make([]bool, openings)
		}
	}
	return v
}

// judge asks every rule.
func (set *Set) judge(f *facts, v *verdict) {
	building := f.building[:]
	for i := range set.rules {
		c := &set.rules[i]
		if v.at[i] == nil {
			v.fired[i] = c.fires(nil, building)
			continue
		}
		v.fired[i] = false
		for j := range f.openings {
			v.at[i][j] = c.fires(f.openings[j][:], building)
			v.fired[i] = v.fired[i] || v.at[i][j]
		}
	}
	set.add(f, v)
}

// windTrust is what evidence is worth in a wind that rivals the fire's own
// pressures: the trade calls every reading in wind one of low confidence, the
// figure is chosen by us.
const windTrust = 0.6

// add sums the log-odds. A rule that fires at several openings counts once.
func (set *Set) add(f *facts, v *verdict) {
	v.stage, v.regime, v.hazard = set.priors.Stage, set.priors.Regime, set.priors.Hazard
	v.evidence = 0
	for i := range set.rules {
		if !v.fired[i] {
			continue
		}
		c := &set.rules[i]
		for s := range v.stage {
			v.stage[s] += c.stage[s]
		}
		v.evidence += c.tells
		v.regime += c.regime
		for h := range v.hazard {
			v.hazard[h] += c.hazard[h]
		}
	}
	if wind := f.building[fWind-openingFeatures]; wind >= windFeltMS {
		v.evidence *= windTrust
	}
}

// thinLogOdds is the evidence that leaves a share of 1/e undetermined. Chosen by
// us: about one rule of low confidence.
const thinLogOdds = 0.6

// undetermined is the share that too little evidence leaves unassigned.
func (v *verdict) undetermined() float64 { return num.Exp(-v.evidence / thinLogOdds) }

// shares are the stages' probabilities among themselves.
func (v *verdict) shares() [stageCount]float64 {
	top := v.stage[0]
	for _, x := range v.stage {
		top = math.Max(top, x)
	}
	var p [stageCount]float64
	sum := 0.0
	for s, x := range v.stage {
		p[s] = num.Exp(x - top)
		sum += p[s]
	}
	for s := range p {
		p[s] /= sum
	}
	return p
}

// spread is shares with the undetermined part laid evenly over all stages.
func (v *verdict) spread() [stageCount]float64 {
	p, rest := v.shares(), v.undetermined()
	for s := range p {
		p[s] = float64(p[s]*(1-rest)) + rest/stageCount
	}
	return p
}

// logistic turns log-odds into a probability.
func logistic(x float64) float64 {
	if x < 0 {
		return 1 - 1/(1+num.Exp(x))
	}
	return 1 / (1 + num.Exp(-x))
}

// divergence is the relative entropy of a distribution over another, in bits.
func divergence(p, q *[stageCount]float64) float64 {
	sum := 0.0
	for s, x := range p {
		if x > 0 && q[s] > 0 {
			sum += float64(x * num.Log(x/q[s]))
		}
	}
	return sum / math.Ln2
}
