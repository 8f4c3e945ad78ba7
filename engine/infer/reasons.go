package infer

import (
	"math"
	"sort"

	"lintel/engine"
)

// word is what a rule has to say of one part of the answer.
type word struct {
	about  string
	weight float64
}

// louder returns the word with the greater weight, the first of equals.
func (w word) louder(other word) word {
	if math.Abs(other.weight) > math.Abs(w.weight) {
		return other
	}
	return w
}

// reasons are the rules for and against the answer: the likeliest stage, the
// likelier regime, the hazards that are flagged and the opening nearest the seat
// (-1 for none). Each rule stands once, with its strongest word, what that word is
// about, and where and on which cues it rests.
func (set *Set) reasons(s *scene, v *verdict, nearest int) (because, against []engine.Evidence) {
	because, against = []engine.Evidence{}, []engine.Evidence{}
	top := topStage(v)
	open, shut := s.standing()
	for i := range set.rules {
		if !v.fired[i] {
			continue
		}
		c := &set.rules[i]
		said := set.speaks(c, v, top).louder(nearWord(c, v.at[i], nearest))
		evidence := engine.Evidence{
			Rule: c.rule.ID, Text: "rule/" + c.rule.ID + "/text", Source: "rule/" + c.rule.ID + "/source",
			Weight: toThreePlaces(said.weight), For: said.about, At: holdsAt(v.at[i], s.now), Cues: c.cues,
		}
		if c.stands {
			evidence.Open, evidence.Shut = open, shut
		}
		switch {
		case evidence.Weight > 0:
			because = append(because, evidence)
		case evidence.Weight < 0:
			against = append(against, evidence)
		}
	}
	sort.SliceStable(because, func(i, j int) bool { return stronger(&because[i], &because[j]) })
	sort.SliceStable(against, func(i, j int) bool { return stronger(&against[i], &against[j]) })
	return because, against
}

// toThreePlaces rounds a weight to what its measurement is good for.
func toThreePlaces(x float64) float64 { return math.Floor(float64(x*1000)+0.5) / 1000 }

// stronger orders reasons by weight and then by name, so that the order is one.
func stronger(a, b *engine.Evidence) bool {
	if x, y := math.Abs(a.Weight), math.Abs(b.Weight); x != y {
		return x > y
	}
	return a.Rule < b.Rule
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

// speaks is the strongest word of a rule on stage, regime and flagged hazards.
func (set *Set) speaks(c *compiled, v *verdict, top int) word {
	said := word{string(TrueStages[top]), contrast(&c.stage, top)}
	said = said.louder(regimeWord(c, v))
	for h, hazard := range engine.Hazards {
		if set.flagged(v, h) {
			said = said.louder(word{string(hazard), c.hazard[h]})
		}
	}
	return said
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

// singles is how far a rule lifts the stage that it speaks for most above the mean of
// the others. One that only speaks against a single stage leaves six, and tells little
// of which it is.
func singles(weights *[stageCount]float64) float64 {
	most := 0.0
	for s := range weights {
		most = math.Max(most, contrast(weights, s))
	}
	return most
}

// regimeWord is about the likelier regime.
func regimeWord(c *compiled, v *verdict) word {
	if v.regime < 0 {
		return word{string(engine.FuelLimited), -c.regime}
	}
	return word{string(engine.VentilationLimited), c.regime}
}

// nearWord is what a rule says of the opening taken to be nearest the seat.
func nearWord(c *compiled, at []bool, nearest int) word {
	if nearest < 0 || at != nil && !at[nearest] {
		return word{}
	}
	return word{engine.NearestOpening, c.rule.Nearness}
}
