package bench

import (
	"context"
	"fmt"
)

const (
	learnersHere = "1000"
	learnersGoal = 0.6
)

// course is how simulated trainees of one model of learning fared, as
// pwa/bench/learners.mjs states it.
type course struct {
	Unfinished int                `json:"unfinished"`
	Trials     map[string]float64 `json:"trials"`
	Ratio      float64            `json:"ratio"`
	Fixed      float64            `json:"ratio_fixed"`
	Seeing     float64            `json:"ratio_seeing"`
}

// learners is planned practice against a random order, on simulated trainees who
// learn by published models that are not the plan's own. Controls: the random
// order, a fixed one, and one that sees what the trainee knows worst.
var learners = Figure{
	Name: "learners", Unit: "trials over those of a random order", Goal: "0.6, families as skills", Slow: true,
	Measure: func(ctx context.Context) (Result, error) {
		var m struct {
			Learners int               `json:"learners"`
			Models   map[string]course `json:"models"`
		}
		if err := script(ctx, &m, "learners.mjs", learnersHere); err != nil {
			return Result{}, err
		}
		skills, words := m.Models["skills"], m.Models["words"]
		return Result{
			Ours:    map[string]float64{"skills": skills.Ratio, "word_pairs": words.Ratio},
			Control: map[string]float64{"skills_fixed": skills.Fixed, "skills_seeing": skills.Seeing, "word_pairs_fixed": words.Fixed, "word_pairs_seeing": words.Seeing},
			Holds:   skills.Ratio <= learnersGoal,
			How: fmt.Sprintf("%d simulated trainees from 30 %% to 90 %% right after a night, 40 families, two sets of 8 a day; families as skills (knowledge tracing with forgetting): %.0f trials, %.0f at random, %d not there within a year by some order and left out; families as word pairs (activation model), where one who sees into the trainee's head needs %.2f: %.0f and %.0f, %d left out",
				m.Learners, skills.Trials["planned"], skills.Trials["random"], skills.Unfinished, words.Seeing, words.Trials["planned"], words.Trials["random"], words.Unfinished),
		}, nil
	},
}
