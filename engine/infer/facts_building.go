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

// set gives a feature of the building its value.
func (f *facts) set(feature int, x float64) { f.building[feature-openingFeatures] = x }

// contextFacts are what no further look at an opening changes.
func (s *scene) contextFacts(f *facts) {
	f.set(fWater, yesNoValue(s.look.Water))
	f.set(fWaterBegan, s.waterBegan())
	f.set(fWind, s.windMS())
	f.set(fStoreys, math.NaN())
	f.set(fLargeBuilding, math.NaN())
	f.set(fSmallProp, math.NaN())
	if s.building != nil {
		if s.building.Storeys != nil {
			f.set(fStoreys, float64(*s.building.Storeys))
		}
		if s.building.Kind != "" {
			f.set(fLargeBuilding, truthValue(truthOf(containsAny(s.building.Kind, largeKinds))))
			f.set(fSmallProp, truthValue(truthOf(containsAny(s.building.Kind, propKinds))))
		}
	}
	f.set(fLooks, float64(len(s.history)))
	s.stateFacts(f)
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

// standing lists the openings that were seen to stand open and those seen shut, by
// name. A crack never shuts and counts for neither.
func (s *scene) standing() (open, shut []string) {
	for i := range s.now {
		switch o := &s.now[i]; o.isOpen() {
		case yes:
			if o.Kind != engine.SeenCrack {
				open = append(open, o.ID)
			}
		case no:
			shut = append(shut, o.ID)
		}
	}
	sortNames(open)
	sortNames(shut)
	return open, shut
}

// stateFacts say what stands open and what was just moved.
func (s *scene) stateFacts(f *facts) {
	standOpen, standShut := s.standing()
	open, closed := float64(len(standOpen)), float64(len(standShut))
	closedUp, mostlyShut, standing := unknown, unknown, math.NaN()
	if open+closed > 0 {
		closedUp, mostlyShut, standing = truthOf(open == 0), truthOf(closed > open), open
	}
	f.set(fClosedUp, truthValue(closedUp))
	f.set(fMostlyShut, truthValue(mostlyShut))
	f.set(fStandOpen, standing)
	f.set(fStateSeen, open+closed)
	opened, shut := false, false
	for i := range s.look.Changes {
		switch s.look.Changes[i].State {
		case engine.StateOpen, engine.StatePart, engine.StateBroken:
			opened = true
		case engine.StateClosed:
			shut = true
		}
	}
	f.set(fOpened, truthValue(truthOf(opened)))
	f.set(fShut, truthValue(truthOf(shut)))
}

// countFacts count the openings and take the strongest of each cue.
func (s *scene) countFacts(f *facts) {
	var smoking, clear, flames float64
	var flows [4]float64
	for i := range f.openings {
		o := &f.openings[i]
		switch {
		case o[fSmoke] == 1:
			smoking++
		case o[fSmoke] == 0:
			clear++
		}
		if o[fFlame] >= 1 {
			flames++
		}
		if flow := o[fFlow]; !math.IsNaN(flow) {
			flows[int(flow)]++
		}
	}
	f.set(fSmoking, smoking)
	f.set(fInlets, flows[flowIn])
	f.set(fOutlets, flows[flowOut])
	f.set(fTwoWay, flows[flowBoth])
	nothing := math.NaN()
	if smoking+clear+flames > 0 {
		nothing = truthValue(truthOf(smoking+flames == 0))
	}
	f.set(fNothingShows, nothing)
	for i := range engine.OrdinalCues {
		f.set(fMostVolume+i, f.largest(fVolume+i))
	}
	f.set(fAnyFlame, f.largest(fFlame))
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

// trendFacts average each change since the look before over the openings. One
// that takes air in now is left out: smoke that turned elsewhere is a change of
// path and not of the fire.
func (s *scene) trendFacts(f *facts) {
	for i := range engine.OrdinalCues {
		f.set(fMeanVolumeChange+i, f.average(fVolumeChange+i))
	}
}

func (f *facts) average(feature int) float64 {
	sum, n := 0.0, 0
	for i := range f.openings {
		if x := f.openings[i][feature]; !math.IsNaN(x) && f.openings[i][fFlow] != flowIn {
			sum += x
			n++
		}
	}
	if n == 0 {
		return math.NaN()
	}
	return sum / float64(n)
}
