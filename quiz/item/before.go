package item

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"lintel/engine"
	"lintel/engine/cue"
	"lintel/quiz"
)

// A fire that fades is told from one that grows only by how its smoke changed,
// and a scene shows one moment. So a call says what the smoke was like a while
// before, as the simulated fire had it.

// leastBackS is the shortest look back that is told, s, and backStepS what it is
// rounded to. Chosen by us.
const (
	leastBackS = 10.0
	backStepS  = 5.0
)

// past is the rating of each shown opening at one moment.
type past struct {
	at      float64
	ratings []cue.Rating
}

// back is how long before a moment the family looks back, or 0 for not at all.
func (f *Family) back(moment float64) float64 {
	back := math.Min(f.BeforeS, moment/2)
	back = math.Floor(back/backStepS) * backStepS
	if f.BeforeS <= 0 || back < leastBackS {
		return 0
	}
	return back
}

// before compares the shown openings now with how they were, in a sentence. ok is
// false where the truth can only be told by a fall that they do not show.
func (f *Family) before(w *walk) (sentence string, ok bool, err error) {
	back := f.back(w.run.TimeS())
	then := w.remember(w.run.TimeS() - back)
	if back == 0 || then == nil {
		return "", f.BeforeS <= 0 || !fades(w.run.Stage()), nil
	}
	var lines said
	fell, rose := false, false
	for i, id := range f.Show {
		now, err := w.rate(w.run, id)
		if err != nil {
			return "", false, err
		}
		pace, _, _ := change(engine.CueVelocity, &then.ratings[i], &now)
		amount, _, _ := change(engine.CueVolume, &then.ratings[i], &now)
		fell = fell || pace == quiz.Less || amount == quiz.Less
		rose = rose || pace == quiz.More
		lines.add(plainName(id), was(&then.ratings[i], &now))
	}
	sentence = ago(back) + " " + lines.sentence() + "."
	return sentence, !fades(w.run.Stage()) || fell && !rose, nil
}

// fades are the stages that nothing but a change tells.
func fades(s engine.Stage) bool {
	return s == engine.Decay || s == engine.VentilationDecay || s == engine.AfterKnockDown
}

// compared are the words for how smoke was, more or less than now.
var compared = []struct {
	cue        engine.Cue
	more, less string
}{
	{engine.CueVelocity, "faster", "slower"},
	{engine.CueDensity, "thicker", "thinner"},
	{engine.CueDarkness, "darker", "paler"},
	{engine.CueVolume, "more plentiful", "scarcer"},
}

// was says how the smoke at a place was, set against how it is. The place goes
// where the bar stands.
func was(then, now *cue.Rating) string {
	switch {
	case then.Density == 0 && now.Density == 0:
		return "no smoke showed at |, as now"
	case then.Density == 0:
		return "no smoke showed at |, where it shows now"
	case now.Density == 0:
		return "smoke showed at |, where none does now"
	}
	var words []string
	for _, c := range compared {
		switch answer, _, ok := change(c.cue, now, then); {
		case ok && answer == quiz.More:
			words = append(words, c.more)
		case ok && answer == quiz.Less:
			words = append(words, c.less)
		}
	}
	if words == nil {
		return "the smoke at | looked much as it does now"
	}
	return "the smoke at | was " + list(words)
}

// said gathers the places of which one thing is said.
type said struct {
	things []string
	places [][]string
}

func (s *said) add(place, thing string) {
	i := slices.Index(s.things, thing)
	if i < 0 {
		i = len(s.things)
		s.things, s.places = append(s.things, thing), append(s.places, nil)
	}
	s.places[i] = append(s.places[i], place)
}

func (s *said) sentence() string {
	parts := make([]string, len(s.things))
	for i, thing := range s.things {
		parts[i] = strings.Replace(thing, "|", list(s.places[i]), 1)
	}
	return strings.Join(parts, "; ")
}

func ago(seconds float64) string {
	if seconds == 60 {
		return "A minute ago"
	}
	return strconv.Itoa(int(seconds)) + " seconds ago"
}

// note keeps how the shown openings look now.
func (w *walk) note() {
	if len(w.shown) == 0 {
		return
	}
	p := past{at: w.run.TimeS()}
	for _, id := range w.shown {
		rating, err := w.rate(w.run, id)
		if err != nil {
			return
		}
		p.ratings = append(p.ratings, rating)
	}
	w.past = append(w.past, p)
}

// remember returns how they looked at a moment that has been.
func (w *walk) remember(at float64) *past {
	i := slices.IndexFunc(w.past, func(p past) bool { return p.at >= at-slackS })
	if i < 0 {
		return nil
	}
	return &w.past[i]
}
