package trial

import (
	"lintel/engine"
	"lintel/engine/infer"
)

// Report is the reader and its two controls over three denominators.
type Report struct {
	All     Group // every case
	Cue     Group // those with any cue
	Outside Group // those with a cue from outside, read from outside only
}

// Group is one denominator.
type Group struct {
	Name    string
	Ours    Score
	Always  Score // control: flag every case
	Density Score // control: flag a density of 3 or more
}

// Score counts flags within the cases that turned hostile and those that did not.
type Score struct {
	Hostile Count
	Benign  Count
}

// Count is how many cases of one outcome were flagged, and of how many the reader
// said that it cannot tell: nothing flagged, and undetermined its top answer.
type Count struct {
	Flagged   int
	Abstained int
	All       int
}

// Gain is the share of hostile cases flagged less that of benign ones: 0 for a
// reader that knows nothing, 1 for one that is never wrong.
func (s Score) Gain() float64 { return s.Hostile.share() - s.Benign.share() }

func (c Count) share() float64 {
	if c.All == 0 {
		return 0
	}
	return float64(c.Flagged) / float64(c.All)
}

// Better reports whether the reader gains more than both controls over every
// denominator.
func (r Report) Better() bool {
	for _, g := range r.Groups() {
		if g.Ours.Gain() <= g.Always.Gain() || g.Ours.Gain() <= g.Density.Gain() {
			return false
		}
	}
	return true
}

// Groups lists the denominators from the widest.
func (r Report) Groups() []Group { return []Group{r.All, r.Cue, r.Outside} }

// Judge reads every case.
func Judge(set *infer.Set, f File) Report {
	r := Report{All: Group{Name: "all"}, Cue: Group{Name: "any cue"}, Outside: Group{Name: "outside cue"}}
	for i := range f.Cases {
		c := &f.Cases[i]
		r.All.add(set, c.Readings, c.Truth.Outcome)
		if hasCue(c.Readings) {
			r.Cue.add(set, c.Readings, c.Truth.Outcome)
		}
		if outside := c.fromOutside(); hasCue(outside) {
			r.Outside.add(set, outside, c.Truth.Outcome)
		}
	}
	return r
}

// add reads one case. One whose outcome is unclear counts for neither side.
func (g *Group) add(set *infer.Set, r engine.Readings, outcome Outcome) {
	finding := infer.Read(set, r)
	flagged := false
	for _, hazard := range finding.Hazards {
		flagged = flagged || hazard.Flagged
	}
	g.Ours.count(outcome, flagged, !flagged && undetermined(finding))
	g.Always.count(outcome, true, false)
	g.Density.count(outcome, dense(r), false)
}

func (s *Score) count(outcome Outcome, flagged, abstained bool) {
	var c *Count
	switch outcome {
	case Hostile:
		c = &s.Hostile
	case Benign:
		c = &s.Benign
	default:
		return
	}
	c.All++
	if flagged {
		c.Flagged++
	}
	if abstained {
		c.Abstained++
	}
}

func undetermined(f engine.Finding) bool {
	for _, p := range f.Stage {
		if p > f.Stage[engine.Undetermined] {
			return false
		}
	}
	return true
}

// dense is the control that a person in a hurry might use.
func dense(r engine.Readings) bool {
	for _, look := range r.Looks {
		for i := range look.Openings {
			if d := look.Openings[i].Density; d != nil && *d >= 3 {
				return true
			}
		}
	}
	return false
}
