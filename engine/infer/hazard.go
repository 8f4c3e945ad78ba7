package infer

import (
	"slices"

	"lintel/engine"
)

// NoSign is the weakest thing ever said of a hazard. None is called low, safe or
// clear: what is not seen from here may be behind the next opening.
const NoSign = "hazard/no_sign"

// leastChance and mostChance bound a hazard's probability: no look from outside
// rules one out, and no look makes one certain (seven controlled fires with
// limited air gave no backdraught and one smoke explosion: University of
// Canterbury, 1995). The figures are chosen by us.
const (
	leastChance = 0.01
	mostChance  = 0.95
)

func (v *verdict) chance(h int) float64 {
	return leastChance + float64((mostChance-leastChance)*logistic(v.hazard[h]))
}

func (set *Set) hazardFindings(s *scene, f *facts, v *verdict) []engine.HazardFinding {
	list := make([]engine.HazardFinding, hazardCount)
	for h, hazard := range engine.Hazards {
		list[h] = engine.HazardFinding{
			Event:       hazard,
			Probability: v.chance(h),
			Flagged:     set.flagged(v, h),
			Conditions:  set.conditions(s, f, v, h),
		}
	}
	return list
}

// flagged asks for the probability and for at least one condition seen: a hazard
// is never flagged by what fires usually do alone.
func (set *Set) flagged(v *verdict, h int) bool {
	if v.chance(h) < set.priors.Flag[h] {
		return false
	}
	for i := range set.rules {
		if v.fired[i] && set.rules[i].names(h) {
			return true
		}
	}
	return false
}

// names reports whether the rule speaks for a hazard, whatever its measured weight.
func (c *compiled) names(h int) bool { return slices.Contains(c.rule.Hazards, engine.Hazards[h]) }

// conditions words what was seen for a hazard, or else what was looked for.
func (set *Set) conditions(s *scene, f *facts, v *verdict, h int) []string {
	list := []string{}
	for i := range set.rules {
		c := &set.rules[i]
		if v.fired[i] && c.names(h) && c.rule.Condition != "" {
			list = append(list, c.rule.Condition)
		}
	}
	if len(list) == 0 {
		return set.lookedFor(s, f, h)
	}
	return list
}
