package item

import (
	"math/rand/v2"

	"lintel/engine"
	"lintel/engine/sim"
	"lintel/quiz"
)

// pair finds two scenes of the family that a contrast sets apart, and asks which
// of them is the one. Scenes are drawn until both are found.
func (f *Family) pair(draw *rand.Rand, contrast quiz.Contrast, lib sim.Library, test bool) (*made, error) {
	search := pairSearch{family: f, contrast: contrast, draw: draw}
	for try := range tries {
		scene, err := f.scene(draw)
		if err != nil {
			return nil, err
		}
		run, err := sim.New(scene, lib)
		if err != nil {
			return nil, err
		}
		w := walk{scene: &scene, run: run, test: test}
		if f.BeforeS > 0 {
			w.shown = f.Show
		}
		if err := search.through(&w, try >= apartTries); err != nil {
			return nil, err
		}
		if search.sides[0] != nil && search.sides[1] != nil {
			return f.paired(search.sides, draw, contrast), nil
		}
	}
	return nil, nil
}

// apartTries is how many scenes are looked through for the two sides in two
// different fires, before one fire at two moments will do. Chosen by us.
const apartTries = 3

// pairSearch holds what was found so far.
type pairSearch struct {
	family   *Family
	contrast quiz.Contrast
	draw     *rand.Rand
	sides    [2]*made
}

// through goes through a scene for a fair moment of a side that is still wanted,
// and takes one from it, or both.
func (s *pairSearch) through(w *walk, both bool) error {
	f := s.family
	for moment := f.Moment.FromS + float64(s.draw.IntN(farLookEveryS)); moment <= f.Moment.ToS; moment += farLookEveryS {
		if err := w.to(moment); err != nil {
			return err
		}
		side, margin, err := s.side(w)
		if err != nil {
			return err
		}
		if side < 0 || !f.shows(w) {
			continue
		}
		before, told, err := f.before(w)
		if err != nil {
			return err
		}
		if told {
			truth := truthAt(w.run, nil, margin)
			truth.before = before
			s.sides[side] = &made{scene: *w.scene, moment: moment, truth: truth}
		}
		if told && (!both || s.sides[1-side] != nil) {
			return nil
		}
	}
	return nil
}

// paired puts the two scenes in an order, and asks for one of them.
func (f *Family) paired(sides [2]*made, draw *rand.Rand, contrast quiz.Contrast) *made {
	order, wanted := draw.IntN(2), draw.IntN(2)
	first, second := sides[order], sides[1-order]
	pick := quiz.First
	if wanted != order {
		pick = quiz.Second
	}
	ask := f.Asks[0]
	ask.Cue = contrast.Cue
	first.truth.Accept = [][]quiz.Reply{{{Ask: ask.ID(), Pick: pick}}}
	first.truth.CutMargin = min(first.truth.CutMargin, second.truth.CutMargin)
	second.scene.Name, second.scene.EndS = "", second.moment+watchS
	first.second = &quiz.Moment{Scenario: second.scene, MomentS: second.moment}
	first.contrast, first.wanted = &contrast, wanted
	first.truth.before = engine.Sentences(told("pair/first", first.truth.before), told("pair/second", second.truth.before))
	return first
}

// told says of which scene the sentences that follow are.
func told(which, sentences string) string {
	if sentences == "" {
		return ""
	}
	return engine.Sentences(which, sentences)
}
