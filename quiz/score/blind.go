package score

import (
	"lintel/engine"
	"lintel/quiz"
)

// blind is the mean error of every reply that could have been given: what
// someone who guesses with closed eyes loses on average.
func blind(kind quiz.AskKind, show []string, accept []quiz.Reply) float64 {
	if kind == quiz.AskMoment {
		return half // to report at once or never, by the toss of a coin
	}
	guesses := possible(kind, show)
	sum := 0.0
	for i := range guesses {
		sum += distance(kind, &guesses[i], accept)
	}
	return sum / float64(len(guesses))
}

// possible lists every reply to an ask of an item that shows these openings; a
// plane, which is a number, in hundredths of the opening's height.
func possible(kind quiz.AskKind, show []string) []quiz.Reply {
	var list []quiz.Reply
	switch kind {
	case quiz.AskLevel:
		for level := range engine.TopLevel + 1 {
			list = append(list, quiz.Reply{Level: &level})
		}
	case quiz.AskPlane:
		for hundredth := range 101 {
			plane := float64(hundredth) / 100
			list = append(list, quiz.Reply{Plane: &plane})
		}
	case quiz.AskFlow:
		for _, flow := range engine.Flows {
			list = append(list, quiz.Reply{Flow: flow})
		}
	case quiz.AskStage:
		for _, stage := range engine.Stages[:len(engine.Stages)-1] {
			list = append(list, quiz.Reply{Stage: stage})
		}
	case quiz.AskRegime:
		list = []quiz.Reply{{Regime: engine.FuelLimited}, {Regime: engine.VentilationLimited}}
	case quiz.AskChange:
		list = []quiz.Reply{{Change: quiz.Less}, {Change: quiz.Same}, {Change: quiz.More}}
	case quiz.AskTrend:
		list = []quiz.Reply{{Trend: quiz.Better}, {Trend: quiz.Steady}, {Trend: quiz.Worse}}
	case quiz.AskPick:
		list = []quiz.Reply{{Pick: quiz.First}, {Pick: quiz.Second}}
	case quiz.AskOpening:
		for _, id := range show {
			list = append(list, quiz.Reply{Opening: id})
		}
	}
	return list
}
