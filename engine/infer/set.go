package infer

import (
	"slices"

	"lintel/engine"
)

// Set is the rules made ready to be judged.
type Set struct {
	rules  []compiled
	priors Priors

	answers map[engine.Cue]*[stageCount][]float64
}

// compiled is a rule with its conditions parsed and its weights laid out.
type compiled struct {
	rule   *Rule
	when   []condition
	unless []condition
	asks   featureMask  // every feature it asks about
	cues   []engine.Cue // that its When rests on
	stands bool         // its When rests on what stands open and what shut
	stage  [stageCount]float64
	regime float64
	hazard [hazardCount]float64
	tells  float64 // how far it lifts one stage above the rest, see singles
}

// NewSet parses the rules. A rule without a weight gets its trade weight.
func NewSet(rules []Rule, weights []Weights, p Priors) (*Set, error) {
	measured := make(map[string]*Weights, len(weights))
	for i := range weights {
		measured[weights[i].Rule] = &weights[i]
	}
	set := &Set{rules: make([]compiled, 0, len(rules)), priors: p}
	if err := set.learn(p.Answers); err != nil {
		return nil, err
	}
	for i := range rules {
		c, err := compileRule(&rules[i])
		if err != nil {
			return nil, err
		}
		c.weigh(measured[c.rule.ID])
		c.tells = singles(&c.stage)
		set.rules = append(set.rules, c)
	}
	return set, nil
}

// learn lays out the prior over answers.
func (s *Set) learn(list []Answers) error {
	s.answers = map[engine.Cue]*[stageCount][]float64{}
	for _, table := range list {
		q := slices.IndexFunc(questions, func(q question) bool { return q.cue == table.Cue })
		if q < 0 {
			return engine.Bad("answers", "names the cue "+quoted(string(table.Cue)), "name a cue that can be looked for")
		}
		rows := table.Stage
		for i, stage := range TrueStages {
			if len(rows[i]) != questions[q].answers {
				return engine.Bad("answers to "+string(table.Cue), "do not cover "+string(stage), "give one share for each answer in every stage")
			}
		}
		s.answers[table.Cue] = &rows
	}
	return nil
}

// Rules lists the rules of the set, in order.
func (s *Set) Rules() []*Rule {
	list := make([]*Rule, len(s.rules))
	for i := range s.rules {
		list[i] = s.rules[i].rule
	}
	return list
}

func compileRule(r *Rule) (compiled, error) {
	c := compiled{rule: r}
	if r.At != AtOpening && r.At != AtBuilding {
		return c, engine.Bad("rule "+r.ID, "is judged at "+quoted(string(r.At)), "use opening or building")
	}
	var err error
	if c.when, err = parseAll(r, r.When); err != nil {
		return c, err
	}
	if c.unless, err = parseAll(r, r.Unless); err != nil {
		return c, err
	}
	for _, condition := range append(slices.Clone(c.when), c.unless...) {
		c.asks.add(condition.feature)
	}
	c.cues, c.stands = restsOn(c.when), restsOnStanding(c.when)
	if len(c.when) == 0 {
		return c, engine.Bad("rule "+r.ID, "has no condition", "say when it holds")
	}
	return c, nil
}

func parseAll(r *Rule, lines []string) ([]condition, error) {
	list := make([]condition, len(lines))
	for i, line := range lines {
		parsed, err := parseCondition(line)
		if err != nil {
			return nil, engine.Bad("rule "+r.ID, "has a condition that cannot be read", err.Error())
		}
		if r.At == AtBuilding && parsed.feature < openingFeatures {
			return nil, engine.Bad("rule "+r.ID, "asks about one opening ("+line+")", "judge it at an opening, or ask about the building")
		}
		list[i] = parsed
	}
	return list, nil
}

// weigh lays out the measured weights, or else the trade's.
func (c *compiled) weigh(w *Weights) {
	if w != nil {
		c.stage, c.regime, c.hazard = w.Stage, w.Regime, w.Hazard
		return
	}
	weight := c.rule.Confidence.logOdds()
	for i, stage := range TrueStages {
		if slices.Contains(c.rule.Supports, stage) {
			c.stage[i] = weight
		}
		if slices.Contains(c.rule.Opposes, stage) {
			c.stage[i] = -weight
		}
	}
	switch c.rule.Regime {
	case engine.VentilationLimited:
		c.regime = weight
	case engine.FuelLimited:
		c.regime = -weight
	}
	for i, hazard := range engine.Hazards {
		if slices.Contains(c.rule.Hazards, hazard) {
			c.hazard[i] = weight
		}
	}
}

// fires judges the rule on the facts of an opening (nil for none).
func (c *compiled) fires(opening, building []float64) bool {
	for i := range c.when {
		if c.when[i].holds(opening, building) != yes {
			return false
		}
	}
	for i := range c.unless {
		if c.unless[i].holds(opening, building) == yes {
			return false
		}
	}
	return true
}
