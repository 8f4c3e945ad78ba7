package main

import (
	"fmt"
	"strconv"

	"lintel/engine"
	"lintel/engine/infer"
)

// rival is the control: a multinomial logistic reader on the same readings, free
// to weigh every cue as it likes and bound to no rule.
type rival struct {
	head   head
	places map[string]int
}

// newRival fits the control on the fires that fit the rules' weights.
func newRival(s sample) *rival {
	r := &rival{places: map[string]int{}}
	seen := make([]example, len(s.examples))
	for i, e := range s.examples {
		seen[i] = example{moment: e.moment, rules: r.features(e.readings, true)}
	}
	none := make([]infer.Rule, len(r.places))
	r.head = newHead(none, len(trueStages), func(*infer.Rule, int) claim { return silent })
	r.head.free = true
	r.head.fit(sample{moments: s.moments, examples: seen}, func(m *moment) int { return indexOf(trueStages, m.Stage) })
	return r
}

// call is its top stage.
func (r *rival) call(readings engine.Readings) engine.Stage {
	p := make([]float64, len(trueStages))
	r.head.shares(r.features(readings, false), p)
	best := 0
	for c := range p {
		if p[c] > p[best] {
			best = c
		}
	}
	return trueStages[best]
}

// features are the strongest of each cue, what stands open, and the direction of
// each change, each as "name=value". Unknown ones are left out.
func (r *rival) features(readings engine.Readings, learn bool) []int {
	look := readings.Looks[len(readings.Looks)-1]
	names := map[string]bool{}
	for _, cue := range engine.OrdinalCues {
		most := -1
		for i := range look.Openings {
			if level := look.Openings[i].Level(cue); level != nil {
				most = max(most, *level)
			}
		}
		names[string(cue)+"="+strconv.Itoa(most)] = true
	}
	open := 0
	for i := range look.Openings {
		o := &look.Openings[i]
		names["flow="+string(o.Flow)] = true
		names["flame="+string(o.Flame)] = true
		names["colour="+string(o.Colour)] = true
		names["churning="+strconv.Itoa(yesOrNo(o.Churning))] = true
		names["pulsing="+strconv.Itoa(yesOrNo(o.Pulsing))] = true
		names["vanishes="+strconv.Itoa(yesOrNo(o.Vanishes))] = true
		if o.State == engine.StateOpen {
			open++
		}
	}
	names["open="+strconv.Itoa(min(open, 4))] = true
	names["water="+strconv.Itoa(yesOrNo(look.Water))] = true
	names["moved="+strconv.Itoa(min(len(look.Changes), 1))] = true
	if len(readings.Looks) > 1 {
		r.changes(names, readings.Looks[0], look)
	}
	var list []int
	for name := range names {
		place, known := r.places[name]
		if !known {
			if !learn {
				continue
			}
			place = len(r.places)
			r.places[name] = place
		}
		list = append(list, place)
	}
	return list
}

func (r *rival) changes(names map[string]bool, before, now engine.Look) {
	for _, cue := range engine.OrdinalCues {
		sum, n := 0, 0
		for i := range now.Openings {
			for j := range before.Openings {
				a, b := before.Openings[j].Level(cue), now.Openings[i].Level(cue)
				if before.Openings[j].ID == now.Openings[i].ID && a != nil && b != nil {
					sum, n = sum+*b-*a, n+1
				}
			}
		}
		if n > 0 {
			names[fmt.Sprintf("%s change=%d", cue, min(max(2*sum/n, -2), 2))] = true
		}
	}
}
