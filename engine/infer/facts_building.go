package infer

import (
	"math"
	"slices"
	"strings"

	"lintel/engine"
)

// largeKinds and propKinds are words in a building's kind that tell its size.
var (
	largeKinds = []string{"warehouse", "commercial", "store", "shop", "factory", "school", "church", "restaurant", "hall"}
	propKinds  = []string{"box", "prop", "model"}
)

// buildingFacts are the features of the whole scene.
func (s *scene) buildingFacts(f *facts) {
	b := &f.building
	set := func(feature int, x float64) { b[feature-openingFeatures] = x }
	set(fWater, yesNoValue(s.look.Water))
	set(fWaterBegan, s.waterBegan())
	set(fWind, s.windMS())
	set(fStoreys, math.NaN())
	set(fLargeBuilding, math.NaN())
	set(fSmallProp, math.NaN())
	if s.building != nil {
		if s.building.Storeys != nil {
			set(fStoreys, float64(*s.building.Storeys))
		}
		if s.building.Kind != "" {
			set(fLargeBuilding, truthValue(truthOf(containsAny(s.building.Kind, largeKinds))))
			set(fSmallProp, truthValue(truthOf(containsAny(s.building.Kind, propKinds))))
		}
	}
	set(fLooks, float64(len(s.history)))
	s.stateFacts(set)
	s.countFacts(f, set)
	s.patternFacts(f, set)
	s.trendFacts(f, set)
}

func containsAny(text string, words []string) bool {
	return slices.ContainsFunc(words, func(w string) bool { return strings.Contains(text, w) })
}

func (s *scene) waterBegan() float64 {
	if s.look.Water == nil || s.before == nil || s.before.Water == nil {
		return math.NaN()
	}
	return truthValue(truthOf(*s.look.Water && !*s.before.Water))
}

func (s *scene) windMS() float64 {
	if s.look.Wind == nil || s.look.Wind.MS == nil {
		return math.NaN()
	}
	return *s.look.Wind.MS
}

// stateFacts say what stands open and what was just moved.
func (s *scene) stateFacts(set func(int, float64)) {
	closed, open := false, false
	for i := range s.now {
		switch s.now[i].isOpen() {
		case yes:
			open = open || s.now[i].Kind != engine.SeenCrack
		case no:
			closed = true
		}
	}
	closedUp := unknown
	if open || closed {
		closedUp = truthOf(!open)
	}
	set(fClosedUp, truthValue(closedUp))
	opened, shut := false, false
	for i := range s.look.Changes {
		switch s.look.Changes[i].State {
		case engine.StateOpen, engine.StatePart, engine.StateBroken:
			opened = true
		case engine.StateClosed:
			shut = true
		}
	}
	set(fOpened, truthValue(truthOf(opened)))
	set(fShut, truthValue(truthOf(shut)))
}

// countFacts count the openings and take the strongest of each cue.
func (s *scene) countFacts(f *facts, set func(int, float64)) {
	var smoking, inlets, outlets, twoWay, shows, clear float64
	for i := range s.now {
		switch s.now[i].showsSmoke() {
		case yes:
			smoking++
			shows++
		case no:
			clear++
		}
		if s.now[i].Flame == engine.FlameTongues || s.now[i].Flame == engine.FlameFull {
			shows++
		}
		switch s.now[i].Flow {
		case engine.FlowIn:
			inlets++
		case engine.FlowOut:
			outlets++
		case engine.FlowBoth:
			twoWay++
		}
	}
	set(fSmoking, smoking)
	set(fInlets, inlets)
	set(fOutlets, outlets)
	set(fTwoWay, twoWay)
	nothing := unknown
	if shows > 0 || clear > 0 {
		nothing = truthOf(shows == 0)
	}
	set(fNothingShows, truthValue(nothing))
	for i := range engine.OrdinalCues {
		set(fMostVolume+i, f.largest(fVolume+i))
	}
	set(fAnyFlame, f.largest(fFlame))
}

// largest is the highest known value of a feature over the openings.
func (f *facts) largest(feature int) float64 {
	most := math.NaN()
	for i := range f.openings {
		if x := f.openings[i][feature]; x > most || math.IsNaN(most) {
			most = x
		}
	}
	return most
}

// trendFacts average each change since the look before over the openings.
func (s *scene) trendFacts(f *facts, set func(int, float64)) {
	for i := range engine.OrdinalCues {
		set(fMeanVolumeChange+i, f.average(fVolumeChange+i))
	}
}

func (f *facts) average(feature int) float64 {
	sum, n := 0.0, 0
	for i := range f.openings {
		if x := f.openings[i][feature]; !math.IsNaN(x) {
			sum += x
			n++
		}
	}
	if n == 0 {
		return math.NaN()
	}
	return sum / float64(n)
}
