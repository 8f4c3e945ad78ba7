package session

import (
	"slices"

	"lintel/engine"
	"lintel/quiz"
)

// misreadFrom is how large a mean error must be to be worth teaching to, and
// leaning how many steps a mean must lie off to have a direction (both chosen
// by us).
const (
	misreadFrom = 0.1
	leaning     = 0.5
)

// tally sums what was given to a cue.
type tally struct {
	cue                           string
	judged, right, steps, stepped int
	sum                           float64
}

func (t *tally) add(part *PartMark) {
	t.judged++
	t.right += one(part.Right)
	t.sum += part.Error
	if part.Steps != nil {
		t.steps += *part.Steps
		t.stepped++
	}
}

func (t *tally) mean() float64 { return t.sum / float64(t.judged) }

func (t *tally) misread() Misread {
	way := Mixed
	if t.stepped > 0 {
		switch mean := float64(t.steps) / float64(t.stepped); {
		case mean >= leaning:
			way = TooHeavy
		case mean <= -leaning:
			way = TooLight
		}
	}
	return Misread{Cue: t.cue, Judged: t.judged, Right: t.right, MeanErr: t.mean(), Way: way}
}

// CueOf is the cue that an ask is about. A call of stage or regime is about no
// single one.
func CueOf(ask *quiz.Ask) string {
	switch {
	case ask.Cue != "":
		return string(ask.Cue)
	case ask.Kind == quiz.AskFlow:
		return string(engine.CueFlow)
	case ask.Kind == quiz.AskPlane:
		return string(engine.CueNeutralPlane)
	}
	return string(ask.Kind)
}

// cues tallies the class by cue, worst first; ties stand in the order met.
func (s *State) cues() []tally {
	var all []tally
	for i := range s.Scenes {
		scene := &s.Scenes[i]
		for j := range scene.Item.Question.Asks {
			if s.doubted(scene.ID, scene.Item.Question.Asks[j].ID) {
				continue
			}
			all = s.tallyAsk(all, scene.ID, &scene.Item.Question.Asks[j])
		}
	}
	return worstFirst(all)
}

func (s *State) tallyAsk(all []tally, scene string, ask *quiz.Ask) []tally {
	for _, g := range s.gather(scene, ask.ID) {
		all = addTo(all, CueOf(ask), g.part)
	}
	return all
}

// tallyPerson tallies one person's answers by cue, worst first.
func tallyPerson(answers []PersonAnswer) []tally {
	var all []tally
	for i := range answers {
		for j := range answers[i].Parts {
			if part := &answers[i].Parts[j]; !part.Doubted {
				all = addTo(all, part.Cue, &part.PartMark)
			}
		}
	}
	return worstFirst(all)
}

func addTo(all []tally, cue string, part *PartMark) []tally {
	at := slices.IndexFunc(all, func(t tally) bool { return t.cue == cue })
	if at < 0 {
		all, at = append(all, tally{cue: cue}), len(all)
	}
	all[at].add(part)
	return all
}

func worstFirst(all []tally) []tally {
	slices.SortStableFunc(all, func(a, b tally) int {
		switch {
		case a.mean() > b.mean():
			return -1
		case a.mean() < b.mean():
			return 1
		}
		return 0
	})
	return all
}

// misread is the cue that was read worst, or nil when none was read badly.
func (s *State) misread() *Misread {
	all := s.cues()
	if len(all) == 0 || all[0].mean() < misreadFrom {
		return nil
	}
	worst := all[0].misread()
	return &worst
}

// suggest takes a family about the misread cue: one that the class has not had
// if there is one, else the one that it has had least, with a new seed.
func (s *State) suggest(worst *Misread, choices []Choice) *Suggestion {
	if worst == nil {
		return nil
	}
	var best *Choice
	fewest := 0
	for i := range choices {
		if !slices.Contains(choices[i].Cues, worst.Cue) {
			continue
		}
		if had := s.had(choices[i].Family); best == nil || had < fewest {
			best, fewest = &choices[i], had
		}
	}
	if best == nil {
		return nil
	}
	return &Suggestion{Family: best.Family, Title: best.Title, Seed: s.freshSeed(best.Family), Cue: worst.Cue, Way: worst.Way}
}

func (s *State) had(family string) int {
	n := 0
	for i := range s.Scenes {
		n += one(s.Scenes[i].Family == family)
	}
	return n
}

// freshSeed is one more than the highest that the class has had of a family.
func (s *State) freshSeed(family string) uint64 {
	seed := uint64(0)
	for i := range s.Scenes {
		if s.Scenes[i].Family == family {
			seed = max(seed, s.Scenes[i].Seed)
		}
	}
	return seed + 1
}
