package score

import (
	"math"
	"slices"

	"lintel/engine"
	"lintel/quiz"
)

const (
	// planeRight is how near a neutral plane must be put to count as right: a
	// tenth of the opening's height, chosen by us.
	planeRight = 0.1
	// planeWrong is how far off is as wrong as can be. Chosen by us: from the
	// middle of an opening to its head or foot.
	planeWrong = 0.5
	// half is the error of a near miss among words. Chosen by us.
	half = 0.5
)

// distance is the error from 0 to 1 of a reply against the nearest right one.
func distance(kind quiz.AskKind, reply *quiz.Reply, accept []quiz.Reply) float64 {
	least := 1.0
	for i := range accept {
		least = math.Min(least, apart(kind, reply, &accept[i]))
	}
	return least
}

func apart(kind quiz.AskKind, a, b *quiz.Reply) float64 {
	switch kind {
	case quiz.AskLevel:
		return math.Abs(float64(*a.Level-*b.Level)) / engine.TopLevel
	case quiz.AskPlane:
		return math.Min(1, thousandths(math.Abs(*a.Plane-*b.Plane))/planeWrong)
	case quiz.AskFlow:
		return wordsApart(a.Flow, b.Flow, nearFlows)
	case quiz.AskStage:
		return wordsApart(a.Stage, b.Stage, nearStages)
	case quiz.AskRegime:
		return wordsApart(a.Regime, b.Regime, nil)
	case quiz.AskChange:
		return math.Abs(float64(changeRank(a.Change)-changeRank(b.Change))) / 2
	case quiz.AskTrend:
		return wordsApart(a.Trend, b.Trend, nearTrends)
	case quiz.AskOpening:
		return wordsApart(a.Opening, b.Opening, nil)
	case quiz.AskPick:
		return wordsApart(a.Pick, b.Pick, nil)
	}
	return 1
}

// near are the pairs of words that are one step apart.
type near[T comparable] [][2]T

// nearFlows: who calls a two-way opening one-way missed half of it.
var nearFlows = near[engine.Flow]{{engine.FlowBoth, engine.FlowIn}, {engine.FlowBoth, engine.FlowOut}}

// nearStages are the stages that follow on each other as a fire develops
// (chosen by us from the order in which the trade teaches them).
var nearStages = near[engine.Stage]{
	{engine.Incipient, engine.Growth},
	{engine.Growth, engine.PreFlashover},
	{engine.PreFlashover, engine.FullyDeveloped},
	{engine.Growth, engine.VentilationDecay},
	{engine.PreFlashover, engine.VentilationDecay},
	{engine.FullyDeveloped, engine.VentilationDecay},
	{engine.FullyDeveloped, engine.Decay},
	{engine.VentilationDecay, engine.Decay},
	{engine.Decay, engine.AfterKnockDown},
}

// nearTrends: steady lies between better and worse.
var nearTrends = near[quiz.Trend]{{quiz.Better, quiz.Steady}, {quiz.Steady, quiz.Worse}}

func wordsApart[T comparable](a, b T, pairs near[T]) float64 {
	switch {
	case a == b:
		return 0
	case slices.Contains(pairs, [2]T{a, b}), slices.Contains(pairs, [2]T{b, a}):
		return half
	}
	return 1
}

// thousandths rounds a length, so that a tenth off is a tenth off wherever in
// the opening it lies.
func thousandths(x float64) float64 { return math.Floor(float64(x*1000)+0.5) / 1000 }

func changeRank(c quiz.Change) int {
	switch c {
	case quiz.Less:
		return -1
	case quiz.More:
		return 1
	}
	return 0
}

// slack is the largest error that still counts as right.
func slack(kind quiz.AskKind) float64 {
	if kind == quiz.AskPlane {
		return planeRight / planeWrong
	}
	return 0
}

// signedSteps is how many levels a reply lies above the nearest right one.
func signedSteps(level int, accept []quiz.Reply) int {
	best := level - *accept[0].Level
	for _, right := range accept[1:] {
		if steps := level - *right.Level; abs(steps) < abs(best) {
			best = steps
		}
	}
	return best
}

func abs(n int) int { return max(n, -n) }
