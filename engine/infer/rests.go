package infer

import (
	"slices"
	"sort"

	"lintel/engine"
)

// ratedAs are the cues as one rates them at an opening, by feature. Those that other
// features of an opening are made of stand in comparedAs.
var ratedAs = map[int]engine.Cue{
	fFlow: engine.CueFlow, fVolume: engine.CueVolume, fVelocity: engine.CueVelocity, fDensity: engine.CueDensity,
	fDarkness: engine.CueDarkness, fPlane: engine.CueNeutralPlane, fColour: engine.CueColour, fFlame: engine.CueFlame,
	fWindow: engine.CueWindow, fChurning: engine.CueChurning, fPulsing: engine.CuePulsing, fVanishes: engine.CueVanishes,
}

// comparedAs are features that set an opening's cue against an earlier look or
// another opening, or that gather it over the building, by the feature of that cue.
var comparedAs = map[int]int{
	fVolumeChange: fVolume, fVelocityChange: fVelocity, fDensityChange: fDensity, fDarknessChange: fDarkness,
	fPlaneChange: fPlane, fFastest: fVelocity, fSlower: fVelocity, fDarkest: fDarkness, fPaler: fDarkness,
	fThickest: fDensity, fSmoke: fVolume, fLowestSmoke: fVolume,
	fMostVolume: fVolume, fMostVelocity: fVelocity, fMostDensity: fDensity, fMostDarkness: fDarkness,
	fMeanVolumeChange: fVolume, fMeanVelocityChange: fVelocity, fMeanDensityChange: fDensity, fMeanDarknessChange: fDarkness,
	fAnyFlame: fFlame, fSmoking: fVolume, fNothingShows: fVolume, fOutlets: fFlow, fInlets: fFlow, fTwoWay: fFlow,
	fLowInHighOut: fFlow, fRoofOut: fFlow, fInwardOnly: fFlow,
}

// restsOn lists the cues that a rule's conditions rest on, each once, in their order.
func restsOn(when []condition) []engine.Cue {
	var cues []engine.Cue
	for i := range when {
		feature := when[i].feature
		if base, compared := comparedAs[feature]; compared {
			feature = base
		}
		if cue, rated := ratedAs[feature]; rated && !slices.Contains(cues, cue) {
			cues = append(cues, cue)
		}
	}
	return cues
}

// holdsAt lists the openings at which a rule holds, by name, so that the order in
// which they were told does not matter; none for a rule of the building.
func holdsAt(at []bool, openings []seen) []string {
	var ids []string
	for j, holds := range at {
		if holds {
			ids = append(ids, openings[j].ID)
		}
	}
	sortNames(ids)
	return ids
}

func sortNames(ids []string) {
	sort.SliceStable(ids, func(i, j int) bool { return ids[i] < ids[j] })
}

// countsStanding are the features that count what stands open and what shut.
var countsStanding = []int{fClosedUp, fStandOpen, fMostlyShut, fStateSeen}

// restsOnStanding reports whether a rule rests on how the openings stand.
func restsOnStanding(when []condition) bool {
	return slices.ContainsFunc(when, func(c condition) bool { return slices.Contains(countsStanding, c.feature) })
}
