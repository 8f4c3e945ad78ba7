package lint

import (
	"slices"
	"strings"

	"lintel/engine"
	"lintel/engine/infer"
)

// checkRules wants each rule to be whole: to say something, to be able to be
// wrong, and to name only what exists.
func (b *book) checkRules(f *findings) {
	for _, r := range b.rules {
		where := "rule " + r.ID
		for _, need := range []struct{ name, text string }{
			{"text", r.Text}, {"counter-sign", r.CounterSign}, {"look-alike", r.LookAlike}, {"next look", r.NextLook},
		} {
			if strings.TrimSpace(need.text) == "" {
				f.add(where, "has no "+need.name, "say it in plain words")
			}
		}
		if !engine.Known(r.Confidence, []infer.Confidence{infer.High, infer.Middle, infer.Low}) {
			f.add(where, "has the confidence "+string(r.Confidence), "use high, middle or low")
		}
		stagesKnown(f, where, r.Supports)
		stagesKnown(f, where, r.Opposes)
		stagesKnown(f, where, r.Alike)
		checkEffect(f, where, &r)
	}
}

func checkEffect(f *findings, where string, r *infer.Rule) {
	if len(r.Supports)+len(r.Opposes)+len(r.Hazards) == 0 && r.Regime == "" && r.Nearness == 0 && r.Caution == "" {
		f.add(where, "says nothing", "let it support, oppose, warn or caution")
	}
	for _, stage := range r.Supports {
		if slices.Contains(r.Opposes, stage) {
			f.add(where, "both supports and opposes "+string(stage), "choose one")
		}
	}
	for _, hazard := range r.Hazards {
		if !engine.Known(hazard, engine.Hazards) {
			f.add(where, "names the hazard "+string(hazard), "use "+engine.OneOf(engine.Hazards))
		}
	}
	if len(r.Hazards) > 0 && r.Condition == "" {
		f.add(where, "speaks for a hazard without wording the condition", "word what was seen")
	}
	if len(r.Alike) == 1 {
		f.add(where, "says that one stage cannot be told apart", "name at least two")
	}
	if r.Regime != "" && r.Regime != engine.FuelLimited && r.Regime != engine.VentilationLimited {
		f.add(where, "names the regime "+string(r.Regime), "use fuel_limited or ventilation_limited")
	}
}

// checkLogic refuses two rules that hold under the same conditions.
func (b *book) checkLogic(f *findings) {
	seen := map[string]string{}
	for _, r := range b.rules {
		key := logic(&r)
		if other, twice := seen[key]; twice {
			f.add("rule "+r.ID, "has the same logic as "+other, "join the two")
		}
		seen[key] = r.ID
	}
}

func logic(r *infer.Rule) string {
	when, unless := slices.Clone(r.When), slices.Clone(r.Unless)
	slices.Sort(when)
	slices.Sort(unless)
	return string(r.At) + ": " + strings.Join(when, " and ") + " unless " + strings.Join(unless, " or ")
}

// checkCases runs every case, and wants each rule to have one in which it fires
// and one in which it is silent.
func (b *book) checkCases(f *findings) {
	set, err := infer.NewSet(b.rules, nil, infer.Priors{})
	if err != nil {
		f.add("rules", "cannot be read", err.Error())
		return
	}
	fires, silent := map[string]bool{}, map[string]bool{}
	for _, c := range b.cases {
		readings := c.Readings()
		if err := readings.Validate(); err != nil {
			f.add("rule "+c.Rule, "has a case that is not valid", err.Error())
			continue
		}
		fired := slices.Contains(set.Fired(readings), c.Rule)
		switch {
		case fired && c.Fires:
			fires[c.Rule] = true
		case !fired && !c.Fires:
			silent[c.Rule] = true
		case c.Fires:
			f.add("rule "+c.Rule, "is silent in a case in which it must fire", "mend the rule or the case")
		default:
			f.add("rule "+c.Rule, "fires in a case in which it must be silent", "mend the rule or the case")
		}
	}
	for _, r := range b.rules {
		if !fires[r.ID] {
			f.add("rule "+r.ID, "fires in no case", "add one in which it must")
		}
		if !silent[r.ID] {
			f.add("rule "+r.ID, "is silent in no case", "add one in which it must be")
		}
	}
}
