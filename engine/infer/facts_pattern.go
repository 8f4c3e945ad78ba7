package infer

import (
	"math"

	"lintel/engine"
)

// patternFacts are the features that compare openings with one another.
func (s *scene) patternFacts(f *facts, set func(int, float64)) {
	set(fAllAlike, s.allAlike())
	set(fLowInHighOut, s.lowInHighOut())
	set(fRoofOut, s.roofOut())
	set(fInwardOnly, s.inwardOnly())
	disagree, narrower := s.fastestAgainst(f)
	set(fSpeedAndDarknessDisagree, disagree)
	set(fSizesDiffer, narrower)
}

// allAlike says whether all openings with smoke show the same in every cue rated
// at both of a pair, two cues at least being rated at some pair.
func (s *scene) allAlike() float64 {
	answer := unknown
	for i := range s.now {
		for j := range s.now[:i] {
			if s.now[i].showsSmoke() != yes || s.now[j].showsSmoke() != yes {
				continue
			}
			same, cues := sameSmoke(&s.now[i].Reading, &s.now[j].Reading)
			if !same {
				return truthValue(no)
			}
			if cues >= 2 {
				answer = yes
			}
		}
	}
	return truthValue(answer)
}

// sameSmoke compares two readings over the cues rated at both.
func sameSmoke(a, b *engine.Reading) (same bool, cues int) {
	for _, cue := range engine.OrdinalCues {
		x, y := level(a, cue), level(b, cue)
		if math.IsNaN(x) || math.IsNaN(y) {
			continue
		}
		cues++
		if x != y {
			return false, cues
		}
	}
	return true, cues
}

func (s *scene) lowInHighOut() float64 {
	answer := unknown
	for i := range s.now {
		for j := range s.now {
			low, high := s.now[i].Floor, s.now[j].Floor
			if low == nil || high == nil || *low >= *high || s.now[i].Flow == "" || s.now[j].Flow == "" {
				continue
			}
			answer = either(answer, s.now[i].Flow == engine.FlowIn && s.now[j].lets())
		}
	}
	return truthValue(answer)
}

func (s *scene) roofOut() float64 {
	answer := unknown
	for i := range s.now {
		if s.now[i].group() == roofGroup && s.now[i].Flow != "" {
			answer = either(answer, s.now[i].Flow == engine.FlowOut)
		}
	}
	return truthValue(answer)
}

// inwardOnly says whether air goes in at every gap whose flow was seen, and
// smoke is seen to leave nowhere.
func (s *scene) inwardOnly() float64 {
	answer := unknown
	for i := range s.now {
		switch {
		case s.now[i].lets():
			return 0
		case s.now[i].Flow == engine.FlowIn && s.now[i].group() == gapGroup:
			answer = yes
		case s.now[i].Flow == engine.FlowIn:
			return 0
		}
	}
	return truthValue(answer)
}

// fastestAgainst says whether the one fastest opening is not the darkest, and
// whether no other rated opening is of its class.
func (s *scene) fastestAgainst(f *facts) (disagree, narrower float64) {
	disagree, narrower = math.NaN(), math.NaN()
	top := f.only(fVelocity)
	if top < 0 {
		return disagree, narrower
	}
	if dark := f.openings[top][fDarkness]; !math.IsNaN(dark) {
		disagree = truthValue(truthOf(dark < f.largest(fDarkness)))
	}
	alone := truth(yes)
	for i := range s.now {
		if i != top && !math.IsNaN(f.openings[i][fVelocity]) && s.now[top].like(&s.now[i]) {
			alone = no
		}
	}
	return disagree, truthValue(alone)
}

// only returns the opening that alone has the highest known value of a feature
// known at two or more, or -1.
func (f *facts) only(feature int) int {
	top, known, ties := -1, 0, 0
	for i := range f.openings {
		x := f.openings[i][feature]
		switch {
		case math.IsNaN(x):
			continue
		case top < 0 || x > f.openings[top][feature]:
			top, ties = i, 0
		case x == f.openings[top][feature]:
			ties++
		}
		known++
	}
	if known < 2 || ties > 0 {
		return -1
	}
	return top
}
