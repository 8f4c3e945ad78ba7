package score

import (
	"lintel/engine"
	"lintel/quiz"
)

// blind is the mean error of every reply that could have been given: what
// someone who guesses with closed eyes loses on average.
func blind(kind quiz.AskKind, accept []quiz.Reply) float64 {
	guesses := possible(kind)
	sum := 0.0
	for i := range guesses {
		sum += distance(kind, &guesses[i], accept)
	}
	return sum / float64(len(guesses))
}

// possible lists every reply to an ask; a plane, which is a number, in
// hundredths of the opening's height.
func possible(kind quiz.AskKind) []quiz.Reply {
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
	}
	return list
}
