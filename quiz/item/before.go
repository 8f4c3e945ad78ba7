package item

import (
	"math"
	"slices"
	"strconv"

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

// past is the rating of each shown opening at one moment, and the fire's heat.
type past struct {
	at      float64
	heatW   float64
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

// before compares the shown openings now with how they were, in sentences. ok is
// false where the truth can only be told by a fall that they do not show.
func (f *Family) before(w *walk) (sentences string, ok bool, err error) {
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
		rose = rose || pace == quiz.More || amount == quiz.More
		lines.add(nameOf(id), was(&then.ratings[i], &now))
	}
	return lines.sentences(back), !fades(w.run.Stage()) || fell && !rose, nil
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
	{engine.CueVolume, "more", "less"},
}

// manner is how the smoke at a place was, set against how it is.
type manner struct{ id, how string }

func was(then, now *cue.Rating) manner {
	switch {
	case then.Density == 0 && now.Density == 0:
		return manner{id: "before/none_none"}
	case then.Density == 0:
		return manner{id: "before/none_some"}
	case now.Density == 0:
		return manner{id: "before/some_none"}
	}
	var words []string
	for _, c := range compared {
		switch answer, _, ok := change(c.cue, now, then); {
		case ok && answer == quiz.More:
			words = append(words, engine.Word("was/"+c.more))
		case ok && answer == quiz.Less:
			words = append(words, engine.Word("was/"+c.less))
		}
	}
	if words == nil {
		return manner{id: "before/alike"}
	}
	return manner{"before/was", engine.Slot("how", words...)}
}

// said gathers the places of which one thing is said.
type said struct {
	things []manner
	places [][]string
}

func (s *said) add(place string, thing manner) {
	i := slices.Index(s.things, thing)
	if i < 0 {
		i = len(s.things)
		s.things, s.places = append(s.things, thing), append(s.places, nil)
	}
	s.places[i] = append(s.places[i], place)
}

// sentences says them one by one; the first tells how long ago it was.
func (s *said) sentences(back float64) string {
	list := make([]string, len(s.things))
	for i, thing := range s.things {
		slots := []string{engine.Slot("at", s.places[i]...)}
		if thing.how != "" {
			slots = append(slots, thing.how)
		}
		if i == 0 {
			list[i] = engine.Sentence(thing.id, append(slots, engine.Slot("s", strconv.Itoa(int(back))))...)
		} else {
			list[i] = engine.Sentence(thing.id+"/also", slots...)
		}
	}
	return engine.Sentences(list...)
}

// note keeps how the shown openings look now.
func (w *walk) note() {
	if len(w.shown) == 0 {
		return
	}
	p := past{at: w.run.TimeS(), heatW: w.run.Model().HRR}
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
