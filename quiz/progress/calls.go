package progress

import (
	"slices"
	"sort"
	"strconv"

	"lintel/engine"
	"lintel/quiz"
	"lintel/quiz/score"
)

// calls adds up what was answered with a confidence, and how much of the stage and
// regime was called.
func calls(attempts []quiz.Attempt) quiz.CallProgress {
	var overlaps, briers []float64
	var all []score.Forecast
	kinds := map[quiz.ItemKind][]score.Forecast{}
	for i := range attempts {
		a := &attempts[i]
		if a.Overlap != nil {
			overlaps = append(overlaps, *a.Overlap)
		}
		came, sure := score.Came(a.Parts)
		if !sure || a.Confidence == nil || a.Brier == nil {
			continue
		}
		briers = append(briers, *a.Brier)
		all = append(all, score.Forecast{Said: *a.Confidence, Came: came})
		kinds[a.Kind] = append(kinds[a.Kind], all[len(all)-1])
	}
	sum := quiz.CallProgress{N: len(all), Overlap: mean(overlaps), Brier: mean(briers), Calibration: []quiz.Bin{}, Kinds: kindSums(kinds)}
	if len(all) > 0 {
		bins, gap := score.Calibration(all)
		sum.Calibration, sum.Gap = bins, &gap
	}
	return sum
}

// kindSums sets sure beside right for each kind of item, in the order of the kinds.
func kindSums(kinds map[quiz.ItemKind][]score.Forecast) []quiz.KindSum {
	list := []quiz.KindSum{}
	for _, kind := range quiz.ItemKinds {
		forecasts := kinds[kind]
		if len(forecasts) == 0 {
			continue
		}
		sum := quiz.KindSum{Kind: kind, N: len(forecasts)}
		for _, f := range forecasts {
			sum.Said += f.Said / float64(len(forecasts))
			if f.Came {
				sum.Right += 1 / float64(len(forecasts))
			}
		}
		list = append(list, sum)
	}
	return list
}

// reports adds up what was called out, and when.
func reports(attempts []quiz.Attempt) quiz.ReportProgress {
	var sum quiz.ReportProgress
	var leads []float64
	for i := range attempts {
		for j := range attempts[i].Parts {
			p := &attempts[i].Parts[j]
			count := map[quiz.Signal]*int{quiz.Hit: &sum.Hits, quiz.Miss: &sum.Misses, quiz.FalseAlarm: &sum.FalseAlarms, quiz.CorrectRejection: &sum.CorrectRejections}[p.Signal]
			if count == nil {
				continue
			}
			*count++
			sum.N++
			if p.LeadS != nil {
				leads = append(leads, *p.LeadS)
			}
		}
	}
	if d, c, ok := score.Detection(sum.Hits, sum.Misses, sum.FalseAlarms, sum.CorrectRejections); ok {
		sum.DPrime, sum.Criterion = &d, &c
	}
	sum.LeadS = median(leads)
	return sum
}

// confuse notes what was taken for what.
func (b *book) confuse(p *quiz.Part) {
	if p.Right || len(p.Truth) == 0 {
		return
	}
	switch truth := &p.Truth[0]; {
	case p.Given.Stage != "" && truth.Stage != "":
		pair := inOrder(engine.Stages, truth.Stage, p.Given.Stage)
		b.count(string(pair[0])+" "+string(pair[1]), quiz.Contrast{Stages: pair})
	case p.Given.Regime != "" && truth.Regime != "":
		pair := inOrder(engine.Regimes, truth.Regime, p.Given.Regime)
		b.count(string(pair[0])+" "+string(pair[1]), quiz.Contrast{Regimes: pair})
	case p.Given.Flow != "" && truth.Flow != "":
		pair := inOrder(engine.Flows, truth.Flow, p.Given.Flow)
		b.count(string(pair[0])+" "+string(pair[1]), quiz.Contrast{Flows: pair})
	case p.Given.Level != nil && truth.Level != nil:
		_, cue := whatAsked(p)
		low, high := min(*p.Given.Level, *truth.Level), max(*p.Given.Level, *truth.Level)
		b.count(string(cue)+" "+strconv.Itoa(low)+strconv.Itoa(high), quiz.Contrast{Cue: cue, Levels: []int{low, high}})
	}
}

// inOrder puts two words in the order of their list, so that either way round is
// one pair.
func inOrder[T comparable](list []T, one, other T) []T {
	if slices.Index(list, one) > slices.Index(list, other) {
		one, other = other, one
	}
	return []T{one, other}
}

func (b *book) count(key string, contrast quiz.Contrast) {
	if b.confused[key] == nil {
		b.confused[key] = &quiz.Confusion{Contrast: contrast}
	}
	b.confused[key].N++
}

// confusions are the pairs taken for one another, the most often first.
func (b *book) confusions() []quiz.Confusion {
	keys := make([]string, 0, len(b.confused))
	for key := range b.confused {
		keys = append(keys, key)
	}
	sort.SliceStable(keys, func(i, j int) bool {
		x, y := b.confused[keys[i]].N, b.confused[keys[j]].N
		return x > y || x == y && keys[i] < keys[j]
	})
	list := []quiz.Confusion{}
	for _, key := range keys[:min(len(keys), mostConfusions)] {
		list = append(list, *b.confused[key])
	}
	return list
}
