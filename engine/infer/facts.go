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
	s.refresh(f)
	return f
}

// refresh works the features out again in place, after an answer was tried.
func (s *scene) refresh(f *facts) {
	for i := range s.now {
		s.seenFacts(&s.now[i], &f.openings[i])
	}
	for i := range s.now {
		s.comparedFacts(i, &f.openings[i])
	}
	s.buildingFacts(f)
}

// seenFacts are the features of one opening on its own.
func (s *scene) seenFacts(o *seen, f *[openingFeatures]float64) {
	f[fVolume] = level(&o.Reading, engine.CueVolume)
	f[fVelocity] = level(&o.Reading, engine.CueVelocity)
	f[fDensity] = level(&o.Reading, engine.CueDensity)
	f[fDarkness] = level(&o.Reading, engine.CueDarkness)
	f[fPlane] = orNaN(o.NeutralPlane)
	f[fFloor] = math.NaN()
	if o.Floor != nil {
		f[fFloor] = float64(*o.Floor)
	}
	f[fFlow] = wordValue(engine.Flows, o.Flow)
	f[fColour] = wordValue(engine.Colours, o.Colour)
	f[fFlame] = wordValue(engine.FlamesSeen, o.Flame)
	f[fWindow] = wordValue(engine.GlassesSeen, o.Window)
	f[fKind] = wordValue(engine.SeenKinds, o.Kind)
	f[fState] = wordValue(engine.OpeningStates, o.State)
	f[fChurning] = yesNoValue(o.Churning)
	f[fPulsing] = yesNoValue(o.Pulsing)
	f[fVanishes] = yesNoValue(o.Vanishes)
	f[fSmoke] = truthValue(o.showsSmoke())
	f[fOpen] = truthValue(o.isOpen())
	f[fCrack] = truthValue(truthOf(o.group() == gapGroup))
	s.windFacts(o, f)
	s.changeFacts(o, f)
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

// changeFacts compare the opening with itself in the look before.
func (s *scene) changeFacts(o *seen, f *[openingFeatures]float64) {
	f[fJustOpened], f[fJustShut] = 0, 0
	for i := range s.look.Changes {
		if s.look.Changes[i].Opening == o.ID {
			opened := s.look.Changes[i].State != engine.StateClosed
			f[fJustOpened] = truthValue(truthOf(opened))
			f[fJustShut] = truthValue(truthOf(!opened))
		}
	}
	for i, cue := range engine.OrdinalCues {
		f[fVolumeChange+i] = math.NaN()
		if o.past != nil {
			f[fVolumeChange+i] = f[fVolume+i] - level(o.past, cue)
		}
	}
	f[fPlaneChange] = math.NaN()
	if o.past != nil {
		f[fPlaneChange] = f[fPlane] - orNaN(o.past.NeutralPlane)
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
