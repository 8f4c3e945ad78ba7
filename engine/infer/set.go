package infer

import (
	"slices"
	"strings"

	"lintel/engine"
)

// Set is the rules made ready to be judged.
type Set struct {
	rules  []compiled
	priors priors
	cover  float64

	answers map[engine.Cue]*[stageCount][]float64
}

// priors are Priors as arrays.
type priors struct {
	stage  [stageCount]float64
	regime float64
	hazard [hazardCount]float64
	flag   [hazardCount]float64
}

// compiled is a rule with its conditions parsed and its weights laid out.
type compiled struct {
	rule   *Rule
	source string
	when   []condition
	unless []condition
	asks   featureMask // every feature it asks about
	stage  [stageCount]float64
	regime float64
	hazard [hazardCount]float64
}

const (
	stageCount  = 7
	hazardCount = 4
)

// NewSet parses the rules. A rule without a measure gets its trade weight.
func NewSet(rules []Rule, sources []Source, measures []Measure, p Priors) (*Set, error) {
	titles := make(map[string]string, len(sources))
	for i := range sources {
		titles[sources[i].ID] = sources[i].Title
	}
	measured := make(map[string]*Measure, len(measures))
	for i := range measures {
		measured[measures[i].Rule] = &measures[i]
	}
	set := &Set{rules: make([]compiled, 0, len(rules)), priors: layOut(p), cover: p.Cover}
	if err := set.learn(p.Answers); err != nil {
		return nil, err
	}
	for i := range rules {
		c, err := compileRule(&rules[i], titles)
		if err != nil {
			return nil, err
		}
		c.weigh(measured[c.rule.ID])
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
		rows := new([stageCount][]float64)
		for i, stage := range stages {
			if rows[i] = table.Stage[stage]; len(rows[i]) != questions[q].answers {
				return engine.Bad("answers to "+string(table.Cue), "do not cover "+string(stage), "give one share for each answer in every stage")
			}
		}
		s.answers[table.Cue] = rows
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

func layOut(p Priors) priors {
	var out priors
	for i, stage := range stages {
		out.stage[i] = p.Stage[stage]
	}
	out.regime = p.Regime
	for i, hazard := range engine.Hazards {
		out.hazard[i] = p.Hazards[hazard]
		out.flag[i] = p.Flag[hazard]
	}
	return out
}

func compileRule(r *Rule, titles map[string]string) (compiled, error) {
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
	if len(c.when) == 0 {
		return c, engine.Bad("rule "+r.ID, "has no condition", "say when it holds")
	}
	names := make([]string, len(r.Sources))
	for i, id := range r.Sources {
		title, known := titles[id]
		if !known {
			return c, engine.Bad("rule "+r.ID, "names the source "+quoted(id), "name one of content/sources")
		}
		names[i] = title
	}
	c.source = strings.Join(names, "; ")
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
func (c *compiled) weigh(m *Measure) {
	if m != nil {
		for i, stage := range stages {
			c.stage[i] = m.Stage[stage]
		}
		c.regime = m.Regime
		for i, hazard := range engine.Hazards {
			c.hazard[i] = m.Hazards[hazard]
		}
		return
	}
	weight := c.rule.Confidence.logOdds()
	for i, stage := range stages {
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
