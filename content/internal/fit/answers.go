package main

import (
	"lintel/content/internal/measured"
	"lintel/engine"
)

// answersOf counts, for each cue, how often each answer was seen in each stage at
// an opening that stood open or showed smoke; one of each is added, so that no
// answer is ruled out.
func answersOf(moments []moment) []measured.Answers {
	var list []measured.Answers
	for _, cue := range []engine.Cue{
		engine.CueFlow, engine.CueVolume, engine.CueVelocity, engine.CueDensity, engine.CueDarkness, engine.CueColour,
		engine.CueChurning, engine.CuePulsing, engine.CueVanishes, engine.CueFlame, engine.CueNeutralPlane,
	} {
		table := measured.Answers{Cue: cue, Stage: map[engine.Stage][]float64{}}
		for _, stage := range trueStages {
			counts := make([]float64, answerCount(cue))
			for i := range counts {
				counts[i] = 1
			}
			for i := range moments {
				if moments[i].Stage == stage {
					countAnswers(counts, cue, moments[i].Now.Openings)
				}
			}
			table.Stage[stage] = normalised(counts)
		}
		list = append(list, table)
	}
	return list
}

func countAnswers(counts []float64, cue engine.Cue, openings []engine.Reading) {
	for i := range openings {
		if openings[i].State == engine.StateClosed && openings[i].Volume != nil && *openings[i].Volume == 0 {
			continue
		}
		if answer := answerOf(cue, &openings[i]); answer >= 0 {
			counts[answer]++
		}
	}
}

// answerCount is how many answers a cue has, as the reader asks for it.
func answerCount(cue engine.Cue) int {
	switch cue {
	case engine.CueFlow:
		return len(engine.Flows)
	case engine.CueColour:
		return len(engine.Colours)
	case engine.CueFlame:
		return len(engine.FlamesSeen)
	case engine.CueNeutralPlane:
		return 3
	case engine.CueChurning, engine.CuePulsing, engine.CueVanishes:
		return 2
	}
	return engine.TopLevel + 1
}

// answerOf is the place of what was seen among a cue's answers, or -1.
func answerOf(cue engine.Cue, r *engine.Reading) int {
	switch cue {
	case engine.CueFlow:
		return indexOf(engine.Flows, r.Flow)
	case engine.CueColour:
		return indexOf(engine.Colours, r.Colour)
	case engine.CueFlame:
		return indexOf(engine.FlamesSeen, r.Flame)
	case engine.CueChurning:
		return yesOrNo(r.Churning)
	case engine.CuePulsing:
		return yesOrNo(r.Pulsing)
	case engine.CueVanishes:
		return yesOrNo(r.Vanishes)
	case engine.CueNeutralPlane:
		if r.NeutralPlane == nil {
			return -1
		}
		return min(int(3**r.NeutralPlane), 2)
	}
	if level := r.Level(cue); level != nil {
		return *level
	}
	return -1
}

func yesOrNo(b *bool) int {
	switch {
	case b == nil:
		return -1
	case *b:
		return 1
	}
	return 0
}

func normalised(counts []float64) []float64 {
	sum := 0.0
	for _, n := range counts {
		sum += n
	}
	for i := range counts {
		counts[i] = round(counts[i] / sum)
	}
	return counts
}
