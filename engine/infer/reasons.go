package infer

import (
	"math"
	"slices"
	"strings"

	"lintel/engine"
)

// reasons are the rules for and against the top answer: the likeliest stage, the
// likelier regime and the hazards that are flagged. Each rule stands once, with
// the weight of its strongest word.
func (set *Set) reasons(v *verdict) (because, against []engine.Evidence) {
	because, against = []engine.Evidence{}, []engine.Evidence{}
	top := topStage(v)
	for i := range set.rules {
		if !v.fired[i] {
			continue
		}
		c := &set.rules[i]
		weight := set.speaks(c, v, top)
		evidence := engine.Evidence{Rule: c.rule.ID, Text: c.rule.Text, Weight: weight, Source: c.source}
		switch {
		case weight > 0:
			because = append(because, evidence)
		case weight < 0:
			against = append(against, evidence)
		}
	}
	slices.SortFunc(because, strongestFirst)
	slices.SortFunc(against, strongestFirst)
	return because, against
}

func strongestFirst(a, b engine.Evidence) int {
	switch x, y := math.Abs(a.Weight), math.Abs(b.Weight); {
	case x > y:
		return -1
	case x < y:
		return 1
	}
	return strings.Compare(a.Rule, b.Rule)
}

func topStage(v *verdict) int {
	top := 0
	for s := range v.stage {
		if v.stage[s] > v.stage[top] {
			top = s
		}
	}
	return top
}

// speaks is the strongest weight with which a rule speaks on the top answer,
// negative when against.
func (set *Set) speaks(c *compiled, v *verdict, top int) float64 {
	strongest := contrast(&c.stage, top)
	if weight := regimeWeight(c, v); math.Abs(weight) > math.Abs(strongest) {
		strongest = weight
	}
	for h := range c.hazard {
		if set.flagged(v, h) && math.Abs(c.hazard[h]) > math.Abs(strongest) {
			strongest = c.hazard[h]
		}
	}
	return strongest
}

// contrast is how far a rule lifts one stage above the mean of the others.
func contrast(weights *[stageCount]float64, top int) float64 {
	others := 0.0
	for s, w := range weights {
		if s != top {
			others += w
		}
	}
	return weights[top] - others/(stageCount-1)
}

// regimeWeight is positive when the rule speaks for the likelier regime.
func regimeWeight(c *compiled, v *verdict) float64 {
	if v.regime < 0 {
		return -c.regime
	}
	return c.regime
}
