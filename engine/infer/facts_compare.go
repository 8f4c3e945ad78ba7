package infer

import "math"

// comparedFacts are the features of opening i beside the other openings.
func (s *scene) comparedFacts(i int, f *facts) {
	own := &f.openings[i]
	own[fFastest], own[fSlower] = s.rank(i, f, fVelocity, true)
	own[fDarkest], own[fPaler] = s.rank(i, f, fDarkness, false)
	own[fThickest], _ = s.rank(i, f, fDensity, false)
	own[fLowestSmoke] = s.lowestSmoke(i, f)
	own[fOtherInlet], own[fOtherOutlet], own[fHigherOutlet] = s.otherFlows(i, f)
}

// rank says whether opening i has strictly the most of a cue among the openings
// with smoke, and whether another has more; within its own class where alike.
// Unknown where there is none to compare with.
func (s *scene) rank(i int, f *facts, feature int, alike bool) (most, behind float64) {
	own := f.openings[i][feature]
	if math.IsNaN(own) {
		return own, own
	}
	rivals := 0
	most, behind = 1, 0
	for j := range s.now {
		other := f.openings[j][feature]
		if j == i || math.IsNaN(other) || f.openings[j][fSmoke] != 1 || alike && !s.now[i].like(&s.now[j]) {
			continue
		}
		rivals++
		if other >= own {
			most = 0
		}
		if other > own {
			behind = 1
		}
	}
	if rivals == 0 {
		return math.NaN(), math.NaN()
	}
	if f.openings[i][fSmoke] != 1 {
		return most, math.NaN()
	}
	return most, behind
}

// lowestSmoke says whether opening i shows smoke on the lowest level that does,
// where more than one level was seen.
func (s *scene) lowestSmoke(i int, f *facts) float64 {
	own := s.now[i].floor
	if math.IsNaN(own) || f.openings[i][fSmoke] != 1 {
		return math.NaN()
	}
	levels, answer := 1, 1.0
	for j := range s.now {
		floor := s.now[j].floor
		if math.IsNaN(floor) || floor == own {
			continue
		}
		levels++
		if floor < own && f.openings[j][fSmoke] == 1 {
			answer = 0
		}
	}
	if levels == 1 {
		return math.NaN()
	}
	return answer
}

// otherFlows says whether another opening takes air in, another lets smoke out,
// and a higher one lets smoke out. Unknown where no other flow was seen.
func (s *scene) otherFlows(i int, f *facts) (inlet, outlet, higher float64) {
	inlet, outlet, higher = math.NaN(), math.NaN(), math.NaN()
	for j := range s.now {
		flow := f.openings[j][fFlow]
		if j == i || math.IsNaN(flow) {
			continue
		}
		either(&inlet, flow == flowIn)
		either(&outlet, letsOut(flow))
		if s.now[j].floor > s.now[i].floor {
			either(&higher, letsOut(flow))
		} else if s.now[j].floor <= s.now[i].floor {
			either(&higher, false)
		}
	}
	return inlet, outlet, higher
}

// letsOut reports whether smoke is seen to leave.
func letsOut(flow float64) bool { return flow == flowOut || flow == flowBoth }

// either joins a further yes or no to an answer so far.
func either(so *float64, b bool) {
	if b {
		*so = 1
	} else if math.IsNaN(*so) {
		*so = 0
	}
}
