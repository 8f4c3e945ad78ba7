package score

import (
	"math"

	"lintel/quiz"
)

// earlyS is how long before a condition holds a report of it still counts, s: an
// eye may see what a criterion has not quite met. Chosen by us.
const earlyS = 2.0

// judgeReport compares a report with what there was to report. A hit in the first
// instant has no error and one at the last useful instant half of one; a miss and a
// false alarm are as wrong as can be.
func judgeReport(part *quiz.Part, watch *quiz.Span) {
	truth := &part.Truth[0]
	part.EventS = truth.EventS
	part.Signal = signalOf(&part.Given, truth)
	part.Right = part.Signal == quiz.Hit || part.Signal == quiz.CorrectRejection
	switch {
	case part.Signal == quiz.Hit:
		last := watch.ToS
		if truth.EventS != nil {
			last = *truth.EventS
			lead := last - *part.Given.AtS
			part.LeadS = &lead
		}
		late := math.Max(0, *part.Given.AtS-*truth.AtS)
		if room := last - *truth.AtS; room > 0 {
			part.Error = thousandths(math.Min(half, float64(half*late)/room))
		}
	case !part.Right:
		part.Error = 1
	}
	part.Remark = remark(quiz.AskMoment, part)
}

func signalOf(given, truth *quiz.Reply) quiz.Signal {
	switch {
	case truth.Quiet && given.Quiet:
		return quiz.CorrectRejection
	case truth.Quiet, given.AtS != nil && *given.AtS < *truth.AtS-earlyS:
		return quiz.FalseAlarm
	case given.Quiet, truth.EventS != nil && *given.AtS > *truth.EventS:
		return quiz.Miss
	}
	return quiz.Hit
}

// callOverlap is what a call has in common with the truth, over all that either of
// them names: the index of P. Jaccard (1901), of sets of words. Where the truth
// accepts several words for one ask, the one that was called stands for them.
func callOverlap(parts []quiz.Part) float64 {
	var called, true_ []string
	for i := range parts {
		p := &parts[i]
		word, truth := wordOf(&p.Given), wordOf(&p.Truth[0])
		if p.Right {
			truth = word
		}
		if word != "" {
			called = append(called, word)
		}
		true_ = append(true_, truth)
	}
	return Overlap(called, true_)
}

func wordOf(r *quiz.Reply) string {
	if r.Stage != "" {
		return string(r.Stage)
	}
	return string(r.Regime)
}
