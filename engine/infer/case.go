package infer

import "lintel/engine"

// Case is an example that a rule is written with: one or two looks, and whether
// the rule must fire on the last of them.
type Case struct {
	Rule     string           `json:"rule,omitempty"` // filled in from the rule it stands beside
	Fires    bool             `json:"fires"`
	Note     string           `json:"note,omitempty"`
	Building *engine.Building `json:"building,omitempty"`
	Before   *engine.Look     `json:"before,omitempty"`
	Now      engine.Look      `json:"now"`
}

// Readings is the case as a readings file.
func (c Case) Readings() engine.Readings {
	r := engine.Readings{V: 1, Building: c.Building}
	if c.Before != nil {
		r.Looks = append(r.Looks, *c.Before)
	}
	r.Looks = append(r.Looks, c.Now)
	return r
}
