package main

import (
	"math/rand/v2"

	"lintel/content"
	"lintel/engine"
	"lintel/engine/infer"
)

// example is what the rules made of one moment, seen exactly or as people see.
type example struct {
	moment   int
	readings engine.Readings
	rules    []int               // that fired, by place
	ids      []string            // and by id, for exact ones
	at       map[string][]string // openings at which they did, for exact ones
	exact    bool
}

// fired reports whether a rule judged on the building fired.
func (e *example) fired(id string) bool { return indexOf(e.ids, id) >= 0 }

// data holds the examples of the fires that fit and of those that test.
type data struct {
	moments []moment
	fit     sample
	test    sample
}

// sample is examples with the moments they are of.
type sample struct {
	moments  []moment
	examples []example
}

// How people see. Chosen by us: a cue is missed about a third of the time, an
// opening a quarter, and an ordinal rating is off by a level a quarter of the
// time; the look before is missing half the time.
const (
	missCue     = 0.35
	missOpening = 0.25
	offByOne    = 0.25
	missBefore  = 0.5
)

func examplesOf(set *infer.Set, moments []moment) data {
	d := data{moments: moments, fit: sample{moments: moments}, test: sample{moments: moments}}
	index := map[string]int{}
	for i, r := range content.RuleList() {
		index[r.ID] = i
	}
	for i := range moments {
		to := &d.fit
		if moments[i].Seed%2 == 1 {
			to = &d.test
		}
		rng := rand.New(rand.NewPCG(moments[i].Seed, uint64(i)))
		exact := engine.Readings{V: 1, Building: moments[i].building(), Looks: []engine.Look{moments[i].Before, moments[i].Now}}
		blurred := asSeen(exact, rng)
		to.examples = append(to.examples,
			example{moment: i, exact: true, readings: exact, rules: indices(index, set.Fired(exact)), ids: set.Fired(exact), at: set.FiredAt(exact)},
			example{moment: i, readings: blurred, rules: indices(index, set.Fired(blurred))})
	}
	return d
}

// building is what one sees of it: a prop is as tall as its openings.
func (m *moment) building() *engine.Building {
	if m.Plan.Compartments[0].HeightM < 1 {
		return &engine.Building{Kind: "burn box"}
	}
	return &engine.Building{Kind: "house"}
}

func indices(index map[string]int, ids []string) []int {
	list := make([]int, len(ids))
	for i, id := range ids {
		list[i] = index[id]
	}
	return list
}

// asSeen drops and blurs what an observer would miss.
func asSeen(r engine.Readings, rng *rand.Rand) engine.Readings {
	out := engine.Readings{V: 1, Building: r.Building}
	for i, look := range r.Looks {
		if i == 0 && rng.Float64() < missBefore {
			continue
		}
		seen := look
		seen.Openings = nil
		for _, o := range look.Openings {
			if rng.Float64() >= missOpening {
				seen.Openings = append(seen.Openings, blur(o, rng))
			}
		}
		out.Looks = append(out.Looks, seen)
	}
	return out
}

func blur(o engine.Reading, rng *rand.Rand) engine.Reading {
	missed := func() bool { return rng.Float64() < missCue }
	for _, level := range []**int{&o.Volume, &o.Velocity, &o.Density, &o.Darkness} {
		switch {
		case missed():
			*level = nil
		case *level != nil && rng.Float64() < offByOne:
			*level = new(min(max(**level+2*rng.IntN(2)-1, 0), engine.TopLevel))
		}
	}
	if missed() {
		o.Flow = ""
	}
	if missed() {
		o.Colour = ""
	}
	if missed() {
		o.Flame = ""
	}
	for _, flag := range []**bool{&o.Churning, &o.Pulsing, &o.Vanishes} {
		if missed() {
			*flag = nil
		}
	}
	if missed() {
		o.NeutralPlane = nil
	}
	return o
}
