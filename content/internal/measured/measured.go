// Package measured holds the shape of content/measured/measured.yaml: what
// simulated fires made of the rules. The fitting command writes it, the compiler
// reads it, and the front end shows the hit rates; the reader gets the bare
// weights.
package measured

import (
	"lintel/engine"
	"lintel/engine/infer"
)

// File is the whole file.
type File struct {
	Priors Priors `json:"priors"`
	Rules  []Rule `json:"rules,omitempty"`
}

// Rule is what simulated fires made of one rule: its fitted weights in log-odds,
// and how often what it speaks for was true when it fired. Base is how often it
// was true whether or not the rule fired, which is the control.
type Rule struct {
	Rule    string                    `json:"rule"`
	Claim   string                    `json:"claim"` // what was counted as a hit
	Fires   int                       `json:"fires"`
	Hits    int                       `json:"hits"`
	Share   float64                   `json:"share"`
	Base    float64                   `json:"base"`
	Stage   map[engine.Stage]float64  `json:"stage,omitempty"`
	Regime  float64                   `json:"regime,omitempty"` // positive speaks for ventilation-limited
	Hazards map[engine.Hazard]float64 `json:"hazards,omitempty"`
}

// Priors are infer.Priors by name, and how they came to be.
type Priors struct {
	Stage   map[engine.Stage]float64  `json:"stage"`
	Regime  float64                   `json:"regime"`
	Hazards map[engine.Hazard]float64 `json:"hazards"`
	Flag    map[engine.Hazard]float64 `json:"flag"`
	Cover   float64                   `json:"cover"`
	Answers []Answers                 `json:"answers,omitempty"`
	How     string                    `json:"how"`
}

// Answers is how often each answer to a cue was seen in each stage.
type Answers struct {
	Cue   engine.Cue                 `json:"cue"`
	Stage map[engine.Stage][]float64 `json:"stage"`
}

// Weights are the rules' weights as the reader takes them.
func (f File) Weights() []infer.Weights {
	list := make([]infer.Weights, len(f.Rules))
	for i, r := range f.Rules {
		list[i] = infer.Weights{Rule: r.Rule, Regime: r.Regime}
		for s, stage := range infer.TrueStages {
			list[i].Stage[s] = r.Stage[stage]
		}
		for h, hazard := range engine.Hazards {
			list[i].Hazard[h] = r.Hazards[hazard]
		}
	}
	return list
}

// Reader is the priors as the reader takes them.
func (p Priors) Reader() infer.Priors {
	out := infer.Priors{Regime: p.Regime, Cover: p.Cover}
	for s, stage := range infer.TrueStages {
		out.Stage[s] = p.Stage[stage]
	}
	for h, hazard := range engine.Hazards {
		out.Hazard[h], out.Flag[h] = p.Hazards[hazard], p.Flag[hazard]
	}
	for _, a := range p.Answers {
		table := infer.Answers{Cue: a.Cue}
		for s, stage := range infer.TrueStages {
			table.Stage[s] = a.Stage[stage]
		}
		out.Answers = append(out.Answers, table)
	}
	return out
}
