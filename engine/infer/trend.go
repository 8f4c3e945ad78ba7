package infer

import "math"

// The words of a trend.
const (
	Better = "better"
	Steady = "steady"
	Worse  = "worse"
)

// trendLevels is how many levels, averaged over cues and openings, count as a
// change. People judge change far worse than level (public research on judging
// fire growth), so less than half a level is steady. Chosen by us.
const trendLevels = 0.5

// trend compares the last two looks. Less smoke counts as better only when water
// went on: a fire starved of air shows less smoke too, and that is not
// improvement, so without water the trend stays unsaid.
func (s *scene) trend(f *facts) string {
	sum, n := 0.0, 0.0
	for feature := fMeanVolumeChange; feature <= fMeanDarknessChange; feature++ {
		if x := f.building[feature-openingFeatures]; !math.IsNaN(x) {
			sum += x
			n++
		}
	}
	if n == 0 {
		return ""
	}
	change := sum / n
	switch {
	case change >= trendLevels:
		return Worse
	case change > -trendLevels:
		return Steady
	case f.building[fWater-openingFeatures] == 1:
		return Better
	}
	return ""
}
