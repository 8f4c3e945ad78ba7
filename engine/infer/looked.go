package infer

import (
	"math"
	"slices"

	"lintel/engine"
)

// NotLookedFor is the sentence that names the cues nobody has rated yet. To say of
// a hazard only that no sign was seen, when nobody looked, would be an all-clear.
const NotLookedFor = "hazard/not_looked_for"

// signs are the cues that a hazard's conditions are made of.
// Flow alone is no such cue: it tells which way, and every flow is one.
var signs = []struct {
	cue     engine.Cue
	feature int
}{
	{engine.CuePulsing, fPulsing},
	{engine.CueWindow, fWindow},
	{engine.CueDensity, fDensity},
	{engine.CueDarkness, fDarkness},
	{engine.CueVelocity, fVelocity},
	{engine.CueVolume, fVolume},
	{engine.CueChurning, fChurning},
	{engine.CueFlame, fFlame},
	{engine.CueNeutralPlane, fPlane},
}

// cueOf is the cue of one opening that a feature rests on, as a place among signs,
// or -1.
func cueOf(feature int) int {
	base := feature
	switch {
	case feature >= fMostVolume && feature <= fMostDarkness:
		base = fVolume + feature - fMostVolume
	case feature >= fMeanVolumeChange && feature <= fMeanDarknessChange:
		base = fVolume + feature - fMeanVolumeChange
	case feature >= fVolumeChange && feature <= fPlaneChange:
		base = fVolume + feature - fVolumeChange
	case feature == fAnyFlame:
		base = fFlame
	}
	for i := range signs {
		if signs[i].feature == base {
			return i
		}
	}
	return -1
}

// lookedFor says of a hazard for which nothing spoke what was looked for: that no
// sign was seen where cues were rated, and which of its cues were not.
func (set *Set) lookedFor(s *scene, f *facts, h int) []string {
	list, missing := []string{}, []string{}
	asked := set.asksOf(h)
	for i := range signs {
		switch {
		case !asked[i]:
		case f.rated(signs[i].feature):
			list = []string{NoSign}
		case signs[i].cue != engine.CueWindow || s.hasGlass():
			missing = append(missing, engine.Word("cue/"+string(signs[i].cue)))
		}
	}
	if len(missing) > 0 {
		list = append(list, engine.Sentence(NotLookedFor, engine.Slot("cues", missing...)))
	}
	if len(list) == 0 {
		list = append(list, NoSign)
	}
	return list
}

// asksOf marks the signs that the rules for a hazard ask for.
func (set *Set) asksOf(h int) []bool {
	asked := make([]bool, len(signs))
	for r := range set.rules {
		c := &set.rules[r]
		if !c.names(h) || c.rule.Condition == "" {
			continue
		}
		for i := range c.when {
			if sign := cueOf(c.when[i].feature); sign >= 0 {
				asked[sign] = true
			}
		}
	}
	return asked
}

// rated reports whether a cue was seen at any opening.
func (f *facts) rated(feature int) bool {
	return slices.ContainsFunc(f.openings, func(o [openingFeatures]float64) bool { return !math.IsNaN(o[feature]) })
}

// hasGlass reports whether an opening may be a window that stands shut.
func (s *scene) hasGlass() bool {
	return len(s.now) == 0 || slices.ContainsFunc(s.now, func(o seen) bool {
		return (o.Kind == engine.SeenWindow || o.Kind == "") && o.isOpen() != yes
	})
}
