package score

import "lintel/quiz"

// edges part the confidences into bins, each holding its lower edge and the last
// its upper one too. Chosen by us, so that each of the confidences that the app
// offers falls inside one.
var edges = []float64{0.5, 0.6, 0.7, 0.8, 0.9, 1}

// Forecast is a confidence and whether it came true.
type Forecast struct {
	Said float64
	Came bool
}

// Calibration sorts forecasts into bins and sets what was said beside what came
// true. Empty bins are left out. Gap is the expected calibration error: the mean
// distance of the two, each bin weighing as its number (M. P. Naeini and others,
// "Obtaining well calibrated probabilities using Bayesian binning", AAAI 2015, from
// memory, to be confirmed).
func Calibration(forecasts []Forecast) (bins []quiz.Bin, gap float64) {
	bins = []quiz.Bin{}
	for i := range len(edges) - 1 {
		bin := quiz.Bin{Low: edges[i], High: edges[i+1]}
		for _, f := range forecasts {
			if f.Said < bin.Low || f.Said >= bin.High && i < len(edges)-2 || f.Said > bin.High {
				continue
			}
			bin.N++
			bin.Said += f.Said
			if f.Came {
				bin.Right++
			}
		}
		if bin.N == 0 {
			continue
		}
		bin.Said /= float64(bin.N)
		bin.Right /= float64(bin.N)
		bins = append(bins, bin)
		gap += float64(float64(bin.N)*distanceOf(bin.Said, bin.Right)) / float64(len(forecasts))
	}
	return bins, gap
}

func distanceOf(a, b float64) float64 {
	if a > b {
		return a - b
	}
	return b - a
}
