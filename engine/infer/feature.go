package infer

import "lintel/engine"

// feature is something a condition can ask about: a number, a yes or no, or one
// of a list of words. Its value is a float64 (1 for yes, the index for a word);
// NaN means that it was not seen.
type feature struct {
	name  string
	words []string // of a word feature
	yesNo bool
}

func number(name string) feature { return feature{name: name} }
func yesNo(name string) feature  { return feature{name: name, yesNo: true} }

func wordOf[T ~string](name string, list []T) feature {
	words := make([]string, len(list))
	for i, word := range list {
		words[i] = string(word)
	}
	return feature{name: name, words: words}
}

// The features of one opening.
const (
	fVolume = iota
	fVelocity
	fDensity
	fDarkness
	fPlane
	fFloor
	fFlow
	fColour
	fFlame
	fWindow
	fKind
	fState
	fChurning
	fPulsing
	fVanishes
	fSmoke
	fOpen
	fCrack
	fWindward
	fLeeward
	fJustOpened
	fJustShut
	fSettled
	fVolumeChange
	fVelocityChange
	fDensityChange
	fDarknessChange
	fPlaneChange
	fFastest // from here on: what depends on the other openings
	fDarkest
	fThickest
	fSlower
	fPaler
	fLowestSmoke
	fOtherInlet
	fOtherOutlet
	fHigherOutlet
	openingFeatures
)

// firstCompared is the first of an opening's features that another opening moves.
const firstCompared = fFastest

// The features of the whole building follow on.
const (
	fWater = openingFeatures + iota
	fWaterBegan
	fWind
	fStoreys
	fLargeBuilding
	fSmallProp
	fClosedUp
	fStandOpen
	fMostlyShut
	fStateSeen
	fOpened
	fShut
	fLooks
	fSmoking
	fInlets
	fOutlets
	fTwoWay
	fMostVolume
	fMostVelocity
	fMostDensity
	fMostDarkness
	fAnyFlame
	fAllAlike
	fLowInHighOut
	fRoofOut
	fInwardOnly
	fSpeedAndDarknessDisagree
	fSizesDiffer
	fMeanVolumeChange
	fMeanVelocityChange
	fMeanDensityChange
	fMeanDarknessChange
	fNothingShows
	allFeatures
)

// vocabulary names every feature as the rules' conditions spell it.
var vocabulary = [allFeatures]feature{
	fVolume:         number("volume"),
	fVelocity:       number("velocity"),
	fDensity:        number("density"),
	fDarkness:       number("darkness"),
	fPlane:          number("neutral plane"),
	fFloor:          number("floor"),
	fFlow:           wordOf("flow", engine.Flows),
	fColour:         wordOf("colour", engine.Colours),
	fFlame:          wordOf("flame", engine.FlamesSeen),
	fWindow:         wordOf("window", engine.GlassesSeen),
	fKind:           wordOf("kind", engine.SeenKinds),
	fState:          wordOf("state", engine.OpeningStates),
	fChurning:       yesNo("churning"),
	fPulsing:        yesNo("pulsing"),
	fVanishes:       yesNo("vanishes"),
	fSmoke:          yesNo("smoke shows"),
	fOpen:           yesNo("open"),
	fCrack:          yesNo("gap"),
	fWindward:       yesNo("windward"),
	fLeeward:        yesNo("leeward"),
	fJustOpened:     yesNo("just opened"),
	fJustShut:       yesNo("just shut"),
	fSettled:        yesNo("settled two-way flow"),
	fVolumeChange:   number("volume change"),
	fVelocityChange: number("velocity change"),
	fDensityChange:  number("density change"),
	fDarknessChange: number("darkness change"),
	fPlaneChange:    number("plane change"),
	fFastest:        yesNo("fastest of its class"),
	fDarkest:        yesNo("darkest opening"),
	fThickest:       yesNo("thickest opening"),
	fSlower:         yesNo("slower than another of its class"),
	fPaler:          yesNo("paler than another"),
	fLowestSmoke:    yesNo("lowest level with smoke"),
	fOtherInlet:     yesNo("another opening takes air in"),
	fOtherOutlet:    yesNo("another opening lets smoke out"),
	fHigherOutlet:   yesNo("a higher opening lets smoke out"),

	fWater:                    yesNo("water"),
	fWaterBegan:               yesNo("water began"),
	fWind:                     number("wind"),
	fStoreys:                  number("storeys"),
	fLargeBuilding:            yesNo("large building"),
	fSmallProp:                yesNo("small prop"),
	fClosedUp:                 yesNo("closed up"),
	fStandOpen:                number("openings standing open"),
	fMostlyShut:               yesNo("more stands shut than open"),
	fStateSeen:                number("openings seen open or shut"),
	fOpened:                   yesNo("something was opened"),
	fShut:                     yesNo("something was shut"),
	fLooks:                    number("looks"),
	fSmoking:                  number("openings with smoke"),
	fInlets:                   number("inlets"),
	fOutlets:                  number("outlets"),
	fTwoWay:                   number("two-way openings"),
	fMostVolume:               number("most volume"),
	fMostVelocity:             number("most velocity"),
	fMostDensity:              number("most density"),
	fMostDarkness:             number("most darkness"),
	fAnyFlame:                 wordOf("most flame", engine.FlamesSeen),
	fAllAlike:                 yesNo("all openings alike"),
	fLowInHighOut:             yesNo("low opening in and high opening out"),
	fRoofOut:                  yesNo("roof opening out"),
	fInwardOnly:               yesNo("inward at every gap"),
	fSpeedAndDarknessDisagree: yesNo("fastest is not darkest"),
	fSizesDiffer:              yesNo("fastest is in a narrower class"),
	fMeanVolumeChange:         number("overall volume change"),
	fMeanVelocityChange:       number("overall velocity change"),
	fMeanDensityChange:        number("overall density change"),
	fMeanDarknessChange:       number("overall darkness change"),
	fNothingShows:             yesNo("nothing shows"),
}

func findFeature(name string) (int, bool) {
	for i := range vocabulary {
		if vocabulary[i].name == name {
			return i, true
		}
	}
	return 0, false
}
