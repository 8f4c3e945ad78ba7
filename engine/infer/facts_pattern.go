package infer

import "math"

// patternFacts are the features that compare openings with one another.
func (s *scene) patternFacts(f *facts) {
	f.set(fAllAlike, f.allAlike())
	f.set(fLowInHighOut, s.lowInHighOut(f))
	f.set(fRoofOut, s.roofOut(f))
	f.set(fInwardOnly, s.inwardOnly(f))
	disagree, narrower := s.fastestAgainst(f)
	f.set(fSpeedAndDarknessDisagree, disagree)
	f.set(fSizesDiffer, narrower)
}

// allAlike says whether all openings with smoke show the same in every cue rated
// at both of a pair, two cues at least being rated at some pair.
func (f *facts) allAlike() float64 {
	answer := math.NaN()
	for i := range f.openings {
		if f.openings[i][fSmoke] != 1 {
			continue
		}
		for j := range f.openings[:i] {
			if f.openings[j][fSmoke] != 1 {
				continue
			}
			same, cues := sameSmoke(&f.openings[i], &f.openings[j])
			if !same {
				return 0
			}
			if cues >= 2 {
				answer = 1
			}
		}
	}
	return answer
}

// sameSmoke compares two openings over the cues rated at both.
func sameSmoke(a, b *[openingFeatures]float64) (same bool, cues int) {
	for cue := fVolume; cue <= fDarkness; cue++ {
		if math.IsNaN(a[cue]) || math.IsNaN(b[cue]) {
			continue
		}
		cues++
		if a[cue] != b[cue] {
			return false, cues
		}
	}
	return true, cues
}

func (s *scene) lowInHighOut(f *facts) float64 {
	lowestIn, highestOut, levels := math.Inf(1), math.Inf(-1), 0
	first := math.NaN()
	for i := range s.now {
		floor, flow := s.now[i].floor, f.openings[i][fFlow]
		if math.IsNaN(floor) || math.IsNaN(flow) {
			continue
		}
		if math.IsNaN(first) {
			first, levels = floor, 1
		} else if floor != first {
			levels = 2
		}
		if flow == flowIn {
			lowestIn = math.Min(lowestIn, floor)
		}
		if letsOut(flow) {
			highestOut = math.Max(highestOut, floor)
		}
	}
	if levels < 2 {
		return math.NaN()
	}
	return truthValue(truthOf(lowestIn < highestOut))
}

func (s *scene) roofOut(f *facts) float64 {
	answer := math.NaN()
	for i := range s.now {
		if flow := f.openings[i][fFlow]; s.now[i].class == roofGroup && !math.IsNaN(flow) {
			either(&answer, flow == flowOut)
		}
	}
	return answer
}

// inwardOnly says whether air goes in at every gap whose flow was seen, and
// smoke is seen to leave nowhere.
func (s *scene) inwardOnly(f *facts) float64 {
	answer := math.NaN()
	for i := range s.now {
		flow := f.openings[i][fFlow]
		switch {
		case letsOut(flow):
			return 0
		case flow == flowIn && s.now[i].class == gapGroup:
			answer = 1
		case flow == flowIn:
			return 0
		}
	}
	return answer
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
	alone := 1.0
	for i := range s.now {
		if i != top && !math.IsNaN(f.openings[i][fVelocity]) && s.now[top].like(&s.now[i]) {
			alone = 0
		}
	}
	return disagree, alone
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
