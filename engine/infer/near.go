package infer

import (
	"math"

	"lintel/engine"
	"lintel/engine/internal/num"
)

// How much one level above the openings it may be compared with speaks for an
// opening being nearest, in log-odds: speed first, then darkness, then thickness,
// the trade's order (common practice, no source). The figures are chosen by us
// after 500 simulated fires, in which speed told far more than the other two.
const (
	nearPerVelocity = 1.2
	nearPerDarkness = 0.2
	nearPerDensity  = 0.1
)

// windwardTrust is what an opening on the wind's side is worth in a comparison:
// wind holds its smoke back or blows in. Chosen by us.
const windwardTrust = 0.5

// quiet is the strength of an opening at which nothing moves or shows. Chosen by us.
const quiet = -1.5

// nearness gives each opening the share of belief that the seat lies behind it;
// the shares and that of a concealed seat sum to 1.
func (set *Set) nearness(s *scene, f *facts, v *verdict) []float64 {
	scores := make([]float64, len(s.now))
	concealed := 0.0
	for i := range s.now {
		scores[i] = s.strength(i, f)
	}
	for r := range set.rules {
		weight := set.rules[r].rule.Nearness
		switch {
		case weight == 0 || !v.fired[r]:
		case v.at[r] == nil:
			concealed -= weight
		default:
			for i := range scores {
				if v.at[r][i] {
					scores[i] += weight
				}
			}
		}
	}
	return shareOut(scores, concealed)
}

// strength compares an opening with those of its class in speed and with all in
// darkness and thickness. An opening without smoke has little to say.
func (s *scene) strength(i int, f *facts) float64 {
	if isQuiet(&f.openings[i]) {
		return quiet
	}
	score := float64(nearPerVelocity * s.above(i, f, fVelocity, true))
	score += float64(nearPerDarkness * s.above(i, f, fDarkness, false))
	score += float64(nearPerDensity * s.above(i, f, fDensity, false))
	if f.openings[i][fWindward] == 1 {
		score *= windwardTrust
	}
	return score
}

// isQuiet reports whether an opening shows neither flame nor smoke nor air going in.
func isQuiet(f *[openingFeatures]float64) bool {
	if f[fFlame] >= 1 {
		return false
	}
	return f[fFlow] == flowNone || f[fSmoke] == 0 && f[fFlow] != flowIn
}

// above is how far opening i stands above the mean of those comparable with it.
func (s *scene) above(i int, f *facts, feature int, alike bool) float64 {
	own := f.openings[i][feature]
	if math.IsNaN(own) {
		return 0
	}
	sum, n := 0.0, 0.0
	for j := range s.now {
		if other := f.openings[j][feature]; j != i && !math.IsNaN(other) && (!alike || s.now[i].like(&s.now[j])) {
			sum += other
			n++
		}
	}
	if n == 0 {
		return 0
	}
	return own - sum/n
}

func shareOut(scores []float64, concealed float64) []float64 {
	top := concealed
	for _, x := range scores {
		top = math.Max(top, x)
	}
	rest := num.Exp(concealed - top)
	shares := make([]float64, len(scores))
	sum := rest
	for i, x := range scores {
		shares[i] = num.Exp(x - top)
		sum += shares[i]
	}
	for i := range shares {
		shares[i] /= sum
	}
	return shares
}

// equalShares is how close two shares count as equal, so that the last bit of a
// sum, which depends on the order of the openings, never decides.
const equalShares = 1e-9

// nearest returns the opening with the highest nearness that leads somewhere, or
// -1; equals fall to the one whose id comes first.
func (s *scene) nearest(near []float64, roles []engine.Role) int {
	best := -1
	for i := range near {
		if roles[i] == engine.RoleNone || roles[i] == engine.RoleUnknown {
			continue
		}
		if best < 0 || s.nearer(near, i, best) {
			best = i
		}
	}
	return best
}

// nearer orders two openings by nearness, then by id.
func (s *scene) nearer(near []float64, i, best int) bool {
	if math.Abs(near[i]-near[best]) > equalShares {
		return near[i] > near[best]
	}
	return s.now[i].ID < s.now[best].ID
}
