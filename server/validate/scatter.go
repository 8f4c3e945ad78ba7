package validate

import "math"

// Scatter is how a model's values lie about measured ones: Bias is the factor
// by which it tends to over-read, Model its relative standard deviation with
// that of the experiments taken out.
type Scatter struct {
	Points     int
	Bias       float64
	Model      float64
	Experiment float64
}

// scatterOf compares pairs of model M and experiment E, given the relative
// standard deviation of the experiments σ_E. With u² the variance of ln(M/E)
// about its mean,
//
//	σ_M² = u² - σ_E²        δ = exp(mean ln(M/E) + σ_M²/2 - σ_E²/2)
//
// and σ_E is taken as at most u/√2, so that scatter is never put down to the
// experiment alone.
//
// Source: McGrattan and Toman, "Quantifying the predictive uncertainty of
// complex numerical models", Metrologia 48 (2011) 173 (title from memory, to be
// confirmed), as coded in the scatter-plot script of the FDS and CFAST
// validation guides (firemodels/fds, Utilities/Matlab/scripts/scatplot.m).
// Pairs that are not both positive and finite have no logarithm and do not count.
func scatterOf(model, experiment []float64, sigmaE float64) Scatter {
	var logs []float64
	for i, m := range model {
		if m > 0 && experiment[i] > 0 && !math.IsInf(m, 0) {
			logs = append(logs, math.Log(m/experiment[i]))
		}
	}
	s := Scatter{Points: len(logs), Bias: math.NaN(), Model: math.NaN(), Experiment: sigmaE}
	if len(logs) < 2 {
		return s
	}
	middle, variance := momentsOf(logs)
	s.Experiment = math.Min(sigmaE, math.Sqrt(variance/2))
	s.Model = math.Sqrt(math.Max(0, variance-s.Experiment*s.Experiment))
	s.Bias = math.Exp(middle + (s.Model*s.Model-s.Experiment*s.Experiment)/2)
	return s
}

// momentsOf is the mean and the sample variance.
func momentsOf(list []float64) (middle, variance float64) {
	for _, x := range list {
		middle += x / float64(len(list))
	}
	for _, x := range list {
		variance += (x - middle) * (x - middle) / float64(len(list)-1)
	}
	return middle, variance
}
