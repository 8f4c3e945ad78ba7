package infer

import "lintel/engine"

// NoSign is the weakest thing ever said of a hazard. None is called low, safe or
// clear: what is not seen from here may be behind the next opening.
const NoSign = "no sign of it seen from here"

func (set *Set) hazardFindings(v *verdict) []engine.HazardFinding {
	list := make([]engine.HazardFinding, hazardCount)
	for h, hazard := range engine.Hazards {
		p := logistic(v.hazard[h])
		list[h] = engine.HazardFinding{
			Event:       hazard,
			Probability: p,
			Flagged:     set.flagged(v, h),
			Conditions:  set.conditions(v, h),
		}
	}
	return list
}

// flagged asks for the probability and for at least one condition seen: a hazard
// is never flagged by what fires usually do alone.
func (set *Set) flagged(v *verdict, h int) bool {
	if logistic(v.hazard[h]) < set.priors.flag[h] {
		return false
	}
	for i := range set.rules {
		if v.fired[i] && set.rules[i].hazard[h] > 0 {
			return true
		}
	}
	return false
}

// conditions words what was seen for a hazard.
func (set *Set) conditions(v *verdict, h int) []string {
	list := []string{}
	for i := range set.rules {
		c := &set.rules[i]
		if v.fired[i] && c.hazard[h] > 0 && c.rule.Condition != "" {
			list = append(list, c.rule.Condition)
		}
	}
	if len(list) == 0 {
		list = append(list, NoSign)
	}
	return list
}
