package infer

import (
	"slices"
	"sort"

	"lintel/engine"
)

// Read returns what the readings are consistent with.
func Read(set *Set, r engine.Readings) engine.Finding {
	s := newScene(r)
	f := s.gather()
	v := set.newVerdict(len(s.now))
	set.judge(f, v)
	finding := engine.Finding{
		V:        1,
		Engine:   engine.Version,
		Stage:    set.stageFinding(v),
		Set:      set.alike(v),
		Hazards:  set.hazardFindings(s, f, v),
		Cautions: set.cautions(v),
		Trend:    s.trend(f),
	}
	vent := logistic(v.regime)
	finding.Regime = map[engine.Regime]float64{engine.VentilationLimited: vent, engine.FuelLimited: 1 - vent}
	roles := s.roles(f)
	near := set.nearness(s, f, v)
	finding.Openings = s.openingFindings(f, roles, near)
	finding.Path, finding.PathNote = s.path(roles, near)
	finding.Because, finding.Against = set.reasons(s, v, s.nearest(near, roles))
	finding.NextLook = set.nextLook(s, f, v)
	return finding
}

// Fired lists the ids of the rules that fire on the last look, in order.
func (set *Set) Fired(r engine.Readings) []string {
	s := newScene(r)
	v := set.newVerdict(len(s.now))
	set.judge(s.gather(), v)
	var ids []string
	for i, fired := range v.fired {
		if fired {
			ids = append(ids, set.rules[i].rule.ID)
		}
	}
	return ids
}

// FiredAt lists, for each rule judged at openings that fires on the last look, the
// openings at which it does.
func (set *Set) FiredAt(r engine.Readings) map[string][]string {
	s := newScene(r)
	v := set.newVerdict(len(s.now))
	set.judge(s.gather(), v)
	at := map[string][]string{}
	for i := range set.rules {
		if ids := holdsAt(v.at[i], s.now); ids != nil {
			at[set.rules[i].rule.ID] = ids
		}
	}
	return at
}

func (set *Set) stageFinding(v *verdict) map[engine.Stage]float64 {
	p, rest := v.shares(), v.undetermined()
	finding := make(map[engine.Stage]float64, len(engine.Stages))
	for i, stage := range TrueStages {
		finding[stage] = p[i] * (1 - rest)
	}
	finding[engine.Undetermined] = rest
	return finding
}

// aliveShare is the probability below which a stage that sources do not tell
// apart from another is dropped all the same, other signs speaking against it.
// Chosen by us.
const aliveShare = 0.02

// alike is the set of TrueStages that cannot be told apart from here: the likeliest
// ones up to the covering probability, and with them every stage that a rule
// which fired says the sources do not tell apart.
func (set *Set) alike(v *verdict) []engine.Stage {
	p := v.spread()
	order := make([]int, stageCount)
	for i := range order {
		order[i] = i
	}
	sort.SliceStable(order, func(i, j int) bool { return p[order[i]] > p[order[j]] })
	var in [stageCount]bool
	sum := 0.0
	for _, i := range order {
		in[i] = true
		if sum += p[i]; sum >= set.priors.Cover {
			break
		}
	}
	for i := range set.rules {
		if !v.fired[i] {
			continue
		}
		for at, stage := range TrueStages {
			if slices.Contains(set.rules[i].rule.Alike, stage) {
				in[at] = in[at] || p[at] >= aliveShare
			}
		}
	}
	list := []engine.Stage{}
	for i, stage := range TrueStages {
		if in[i] {
			list = append(list, stage)
		}
	}
	return list
}

func (set *Set) cautions(v *verdict) []string {
	list := []string{}
	for i := range set.rules {
		if v.fired[i] && set.rules[i].rule.Caution != "" && !slices.Contains(list, set.rules[i].rule.Caution) {
			list = append(list, set.rules[i].rule.Caution)
		}
	}
	return list
}
