package infer

import (
	"math"
	"slices"

	"lintel/engine"
)

// facts holds the value of every feature of a scene.
type facts struct {
	openings [][openingFeatures]float64
	building [allFeatures - openingFeatures]float64
}

// windFeltMS is the wind above which pressure on a wall rivals what a fire makes:
// half rho U squared is 2.4 Pa at 2 m/s, and open rooms with 100 to 500 kW
// measured 1.4 to 3.4 Pa (public test data; see the sources of the wind rules).
const windFeltMS = 2.0

// gather works out every feature.
func (s *scene) gather() *facts {
	f := &facts{openings: make([][openingFeatures]float64, len(s.now))}
	for i := range s.now {
		s.seenFacts(&s.now[i], &f.openings[i])
		s.now[i].derive(&f.openings[i])
	}
	s.contextFacts(f)
	s.relate(f)
	return f
}

// relate works out again what depends on more than one opening.
func (s *scene) relate(f *facts) {
	for i := range s.now {
		s.comparedFacts(i, f)
	}
	s.countFacts(f)
	s.patternFacts(f)
	s.trendFacts(f)
}

// derive works out what follows from what was seen at one opening.
func (o *seen) derive(f *[openingFeatures]float64) {
	f[fSmoke] = smokeShows(f)
	for i := range o.past.levels {
		f[fVolumeChange+i] = f[fVolume+i] - o.past.levels[i]
	}
	f[fPlaneChange] = f[fPlane] - o.past.plane
	f[fSettled] = o.settledTwoWay(f)
}

// settledTwoWay says whether smoke leaves and air goes in at an opening that stands open
// and that no look saw moved: the space behind has been breathing through it. One
// just opened on a starved room breathes both ways too before its gas burns, and
// one that pulses is not fed steadily; neither is settled.
func (o *seen) settledTwoWay(f *[openingFeatures]float64) float64 {
	switch {
	case math.IsNaN(f[fFlow]) || math.IsNaN(f[fOpen]):
		return math.NaN()
	case f[fFlow] != flowBoth || f[fOpen] != 1 || f[fPulsing] == 1 || o.moved:
		return 0
	}
	return 1
}

// The places of the flows among engine.Flows.
const (
	flowIn = iota
	flowOut
	flowBoth
	flowNone
)

// smokeShows says whether smoke is seen at an opening.
func smokeShows(f *[openingFeatures]float64) float64 {
	switch {
	case f[fVolume] >= 1 || f[fVelocity] >= 1 || f[fDensity] >= 1 || f[fDarkness] >= 1:
		return 1
	case f[fVolume] == 0:
		return 0
	case f[fFlow] == flowOut || f[fFlow] == flowBoth:
		return 1
	case f[fFlow] == flowNone:
		return 0
	}
	return math.NaN()
}

// seenFacts are the features of one opening on its own.
func (s *scene) seenFacts(o *seen, f *[openingFeatures]float64) {
	f[fVolume] = level(&o.Reading, engine.CueVolume)
	f[fVelocity] = level(&o.Reading, engine.CueVelocity)
	f[fDensity] = level(&o.Reading, engine.CueDensity)
	f[fDarkness] = level(&o.Reading, engine.CueDarkness)
	f[fPlane] = orNaN(o.NeutralPlane)
	f[fFloor] = o.floor
	f[fFlow] = wordValue(engine.Flows, o.Flow)
	f[fColour] = wordValue(engine.Colours, o.Colour)
	f[fFlame] = wordValue(engine.FlamesSeen, o.Flame)
	f[fWindow] = wordValue(engine.GlassesSeen, o.Window)
	f[fKind] = wordValue(engine.SeenKinds, o.Kind)
	f[fState] = wordValue(engine.OpeningStates, o.State)
	f[fChurning] = yesNoValue(o.Churning)
	f[fPulsing] = yesNoValue(o.Pulsing)
	f[fVanishes] = yesNoValue(o.Vanishes)
	f[fOpen] = truthValue(o.isOpen())
	f[fCrack] = truthValue(truthOf(o.class == gapGroup))
	s.windFacts(o, f)
	s.movedFacts(o, f)
}

func (s *scene) windFacts(o *seen, f *[openingFeatures]float64) {
	f[fWindward], f[fLeeward] = math.NaN(), math.NaN()
	if s.look.Wind == nil || o.Side == "" || s.look.Wind.From == "" {
		return
	}
	if speed := s.look.Wind.MS; speed != nil && *speed < windFeltMS {
		f[fWindward], f[fLeeward] = 0, 0
		return
	}
	onto, side := slices.Index(engine.Sides, s.look.Wind.From), slices.Index(engine.Sides, o.Side)
	f[fWindward] = truthValue(truthOf(side == onto))
	f[fLeeward] = truthValue(truthOf(side == (onto+2)%len(engine.Sides)))
}

// movedFacts say whether the opening itself was just moved.
func (s *scene) movedFacts(o *seen, f *[openingFeatures]float64) {
	f[fJustOpened], f[fJustShut] = 0, 0
	for i := range s.look.Changes {
		if s.look.Changes[i].Opening == o.ID {
			opened := s.look.Changes[i].State != engine.StateClosed
			f[fJustOpened] = truthValue(truthOf(opened))
			f[fJustShut] = truthValue(truthOf(!opened))
		}
	}
}

func orNaN(x *float64) float64 {
	if x == nil {
		return math.NaN()
	}
	return *x
}

func wordValue[T ~string](list []T, word T) float64 {
	if i := slices.Index(list, word); i >= 0 {
		return float64(i)
	}
	return math.NaN()
}

func yesNoValue(b *bool) float64 {
	if b == nil {
		return math.NaN()
	}
	return truthValue(truthOf(*b))
}

func truthValue(t truth) float64 {
	switch t {
	case yes:
		return 1
	case no:
		return 0
	}
	return math.NaN()
}
