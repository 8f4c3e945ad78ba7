package infer

import (
	"math"

	"lintel/engine"
)

// Answers holds, for each cue, how often each answer is seen in each stage: the
// prior over the answers to a look not yet taken. Measured on simulated fires;
// where a cue or stage is missing, every answer counts alike.
type Answers struct {
	Cue   engine.Cue
	Stage [stageCount][]float64
}

// question is one cue that can be asked for: the feature it answers, and how many
// answers there are. An answer's value is its place, but for the plane. Alone says
// that the answer moves no feature of another opening or of the building.
type question struct {
	cue     engine.Cue
	feature int
	answers int
	alone   bool
	values  []float64 // where they are not 0, 1, 2 and so on
}

// planeAnswers stand for a low, middle and high neutral plane (the trade's thirds).
var planeAnswers = []float64{0.2, 0.5, 0.8}

var questions = []question{
	{engine.CueFlow, fFlow, len(engine.Flows), false, nil},
	{engine.CueVolume, fVolume, engine.TopLevel + 1, false, nil},
	{engine.CueVelocity, fVelocity, engine.TopLevel + 1, false, nil},
	{engine.CueDensity, fDensity, engine.TopLevel + 1, false, nil},
	{engine.CueDarkness, fDarkness, engine.TopLevel + 1, false, nil},
	{engine.CueColour, fColour, len(engine.Colours), true, nil},
	{engine.CueChurning, fChurning, 2, true, nil},
	{engine.CuePulsing, fPulsing, 2, true, nil},
	{engine.CueVanishes, fVanishes, 2, true, nil},
	{engine.CueFlame, fFlame, len(engine.FlamesSeen), false, nil},
	{engine.CueWindow, fWindow, len(engine.GlassesSeen), true, nil},
	{engine.CueNeutralPlane, fPlane, len(planeAnswers), true, planeAnswers},
}

func (q *question) value(answer int) float64 {
	if q.values != nil {
		return q.values[answer]
	}
	return float64(answer)
}

// open reports whether the cue was not seen at the opening and could be: glass is
// looked at where it stands shut, a neutral plane where gas may go both ways. Hue is
// never asked for: it carries the least weight of all, and nothing here needs it.
func (q *question) open(o *seen, f *[openingFeatures]float64) bool {
	if !math.IsNaN(f[q.feature]) {
		return false
	}
	switch q.cue {
	case engine.CueColour:
		return false
	case engine.CueWindow:
		return o.Kind == engine.SeenWindow && o.isOpen() != yes
	case engine.CueNeutralPlane:
		return f[fFlow] == flowBoth || math.IsNaN(f[fFlow])
	}
	return true
}

// nextLook tries every answer to every cue not yet seen and returns the look that
// is expected to change the stages most, however little. An opening that nobody
// has looked at is always worth one; else nil where no look would tell anything.
func (set *Set) nextLook(s *scene, f *facts, v *verdict) *engine.NextLook {
	t := newTrial(set, s, f, v)
	now := v.spread()
	best := engine.NextLook{GainBits: -1}
	for i := range s.now {
		unlooked := !lookedAt(&f.openings[i])
		for q := range questions {
			if !questions[q].open(&s.now[i], &f.openings[i]) {
				continue
			}
			gain := t.expectedChange(i, &questions[q], &now)
			if (gain > 0 || unlooked) && (gain > best.GainBits || gain == best.GainBits && s.now[i].ID < best.Opening) {
				best = engine.NextLook{Opening: s.now[i].ID, Cue: questions[q].cue, GainBits: gain}
			}
		}
	}
	if best.Opening == "" {
		return nil
	}
	return &best
}

// lookedAt reports whether anything at all was seen of the smoke at an opening.
func lookedAt(f *[openingFeatures]float64) bool {
	for q := range questions {
		if !math.IsNaN(f[questions[q].feature]) {
			return true
		}
	}
	return false
}

// answerChance is how likely an answer is, given how likely each stage is.
func (set *Set) answerChance(q *question, answer int, now *[stageCount]float64) float64 {
	table := set.answers[q.cue]
	if table == nil {
		return 1 / float64(q.answers)
	}
	sum := 0.0
	for stage, p := range now {
		sum += float64(p * table[stage][answer])
	}
	return sum
}
