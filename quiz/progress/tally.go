package progress

import (
	"lintel/engine"
	"lintel/quiz"
	"lintel/quiz/ability"
	"lintel/quiz/score"
)

// tally is one skill being added up.
type tally struct {
	errors []float64
	given  int
	right  int
	leans  []float64 // signed, of answers that have a more and a less
	table  [][]float64
	person ability.Rating
}

func (t *tally) add(p *quiz.Part) {
	t.errors = append(t.errors, p.Error)
	if p.Right {
		t.right++
	}
	if p.Given.Unsure {
		return
	}
	t.given++
	switch {
	case p.Steps != nil && p.Given.Level != nil:
		t.leans = append(t.leans, float64(*p.Steps))
		t.rate(*p.Given.Level-*p.Steps, *p.Given.Level)
	case p.Given.Plane != nil && len(p.Truth) > 0 && p.Truth[0].Plane != nil:
		t.leans = append(t.leans, *p.Given.Plane-*p.Truth[0].Plane)
	}
}

// rate counts a true level and the one that was given.
func (t *tally) rate(truth, given int) {
	const levels = engine.TopLevel + 1
	if t.table == nil {
		t.table = make([][]float64, levels)
		for i := range t.table {
			t.table[i] = make([]float64, levels)
		}
	}
	if truth >= 0 && truth < levels && given >= 0 && given < levels {
		t.table[truth][given]++
	}
}

func (t *tally) progress(skill quiz.Skill) quiz.SkillProgress {
	p := quiz.SkillProgress{
		Skill: skill, N: len(t.errors), Given: t.given, Right: float64(t.right) / float64(len(t.errors)),
		Error: *mean(t.errors), Recent: *mean(t.errors[max(0, len(t.errors)-recent):]),
		Bias: mean(t.leans), Ability: t.person.Logits,
	}
	if t.table != nil && t.given >= score.LeastRatings {
		if kappa, ok := score.Kappa(t.table, score.Quadratic); ok {
			p.Kappa = &kappa
		}
	}
	return p
}
