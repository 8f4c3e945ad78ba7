package infer

import (
	"math"
	"slices"
	"strings"

	"lintel/engine"
)

// NotLookedFor opens the line that names the cues nobody has rated yet. To say of
// a hazard only that no sign was seen, when nobody looked, would be an all-clear.
const NotLookedFor = "not looked for yet: "

// signs are the cues that a hazard's conditions are made of, as they are worded.
// Flow alone is no such cue: it tells which way, and every flow is one.
var signs = []struct {
	cue     engine.Cue
	feature int
	words   string
}{
	{engine.CuePulsing, fPulsing, "pulsing"},
	{engine.CueWindow, fWindow, "the look of the glass"},
	{engine.CueDensity, fDensity, "density"},
	{engine.CueDarkness, fDarkness, "darkness"},
	{engine.CueVelocity, fVelocity, "velocity"},
	{engine.CueVolume, fVolume, "volume"},
	{engine.CueChurning, fChurning, "churning"},
	{engine.CueFlame, fFlame, "flame"},
	{engine.CueNeutralPlane, fPlane, "neutral plane"},
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
			missing = append(missing, signs[i].words)
		}
	}
	if len(missing) > 0 {
		list = append(list, NotLookedFor+strings.Join(missing, ", "))
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
