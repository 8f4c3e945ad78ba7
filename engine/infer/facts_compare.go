package infer

import (
	"math"

	"lintel/engine"
)

// comparedFacts are the features of opening i beside the other openings.
func (s *scene) comparedFacts(i int, f *[openingFeatures]float64) {
	f[fFastest] = s.most(i, engine.CueVelocity, (*seen).like)
	f[fDarkest] = s.most(i, engine.CueDarkness, anyOpening)
	f[fThickest] = s.most(i, engine.CueDensity, anyOpening)
	f[fSlower] = s.lessThanAnother(i, engine.CueVelocity, (*seen).like)
	f[fPaler] = s.lessThanAnother(i, engine.CueDarkness, anyOpening)
	f[fLowestSmoke] = s.lowestSmoke(i)
	f[fOtherInlet], f[fOtherOutlet], f[fHigherOutlet] = s.otherFlows(i)
}

func anyOpening(_, _ *seen) bool { return true }

// most says whether opening i has strictly the most of a cue among comparable
// ones that show smoke; unknown where there is none to compare with.
func (s *scene) most(i int, cue engine.Cue, comparable func(a, b *seen) bool) float64 {
	own, rivals, answer := level(&s.now[i].Reading, cue), 0, yes
	if math.IsNaN(own) {
		return own
	}
	for j := range s.now {
		other := level(&s.now[j].Reading, cue)
		if j == i || math.IsNaN(other) || s.now[j].showsSmoke() != yes || !comparable(&s.now[i], &s.now[j]) {
			continue
		}
		rivals++
		if other >= own {
			answer = no
		}
	}
	if rivals == 0 {
		return math.NaN()
	}
	return truthValue(answer)
}

func (s *scene) lessThanAnother(i int, cue engine.Cue, comparable func(a, b *seen) bool) float64 {
	own, answer := level(&s.now[i].Reading, cue), unknown
	if math.IsNaN(own) || s.now[i].showsSmoke() != yes {
		return math.NaN()
	}
	for j := range s.now {
		other := level(&s.now[j].Reading, cue)
		if j == i || math.IsNaN(other) || !comparable(&s.now[i], &s.now[j]) {
			continue
		}
		if other > own {
			return truthValue(yes)
		}
		answer = no
	}
	return truthValue(answer)
}

// lowestSmoke says whether opening i shows smoke on the lowest level that does,
// where more than one level was seen.
func (s *scene) lowestSmoke(i int) float64 {
	own := s.now[i].Floor
	if own == nil || s.now[i].showsSmoke() != yes {
		return math.NaN()
	}
	levels, answer := 1, yes
	for j := range s.now {
		floor := s.now[j].Floor
		if floor == nil || *floor == *own {
			continue
		}
		levels++
		if *floor < *own && s.now[j].showsSmoke() == yes {
			answer = no
		}
	}
	if levels == 1 {
		return math.NaN()
	}
	return truthValue(answer)
}

// otherFlows says whether another opening takes air in, another lets smoke out,
// and a higher one lets smoke out. Unknown where no other flow was seen.
func (s *scene) otherFlows(i int) (inlet, outlet, higher float64) {
	in, out, up := unknown, unknown, unknown
	for j := range s.now {
		if j == i || s.now[j].Flow == "" {
			continue
		}
		in = either(in, s.now[j].Flow == engine.FlowIn)
		out = either(out, s.now[j].lets())
		if a, b := s.now[i].Floor, s.now[j].Floor; a != nil && b != nil {
			up = either(up, *b > *a && s.now[j].lets())
		}
	}
	return truthValue(in), truthValue(out), truthValue(up)
}

// lets reports whether smoke is seen to leave.
func (o *seen) lets() bool { return o.Flow == engine.FlowOut || o.Flow == engine.FlowBoth }

// either joins a further yes or no to an answer so far.
func either(so truth, b bool) truth {
	if b || so == yes {
		return yes
	}
	return no
}
