package main

import "math"

// descent is the gradient and its running moments.
type descent struct {
	bias, biasMean, biasSquare       []float64
	weight, weightMean, weightSquare [][]float64
	n                                float64
}

func newDescent(rules, classes int) *descent {
	grid := func() [][]float64 {
		g := make([][]float64, rules)
		for i := range g {
			g[i] = make([]float64, classes)
		}
		return g
	}
	return &descent{
		bias: make([]float64, classes), biasMean: make([]float64, classes), biasSquare: make([]float64, classes),
		weight: grid(), weightMean: grid(), weightSquare: grid(),
	}
}

func (d *descent) clear() {
	clear(d.bias)
	for i := range d.weight {
		clear(d.weight[i])
	}
}

// take moves the head one step down the mean gradient.
func (d *descent) take(h *head, examples float64) {
	d.n++
	for c := range h.bias {
		h.bias[c] -= d.step(d.bias[c]/examples, &d.biasMean[c], &d.biasSquare[c])
	}
	for r := range h.weight {
		for c := range h.weight[r] {
			h.weight[r][c] -= d.step(d.weight[r][c]/examples, &d.weightMean[r][c], &d.weightSquare[r][c])
		}
	}
}

func (d *descent) step(gradient float64, mean, square *float64) float64 {
	const keepMean, keepSquare = 0.9, 0.999
	*mean = keepMean**mean + (1-keepMean)*gradient
	*square = keepSquare**square + (1-keepSquare)*gradient*gradient
	corrected := *mean / (1 - math.Pow(keepMean, d.n))
	spread := math.Sqrt(*square / (1 - math.Pow(keepSquare, d.n)))
	return pace * corrected / (spread + 1e-8)
}
