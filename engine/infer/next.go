package infer

import (
	"lintel/engine"
)

// Answers holds, for each cue, how often each answer is seen in each stage: the
// prior over the answers to a look not yet taken. Measured on simulated fires;
// where a cue or stage is missing, every answer counts alike.
type Answers struct {
	Cue   engine.Cue                 `json:"cue"`
	Stage map[engine.Stage][]float64 `json:"stage"`
}

// leastGainBits is the gain below which a look is not worth naming. Chosen by us.
const leastGainBits = 0.005

// question is one cue that can be asked for, and what each answer would be.
type question struct {
	cue     engine.Cue
	answers int
	set     func(r *engine.Reading, answer int)
}

// Plane answers stand for a low, middle and high neutral plane (trade's thirds).
var planeAnswers = [...]float64{0.2, 0.5, 0.8}

var questions = []question{
	{engine.CueFlow, len(engine.Flows), func(r *engine.Reading, a int) { r.Flow = engine.Flows[a] }},
	{engine.CueVolume, engine.TopLevel + 1, func(r *engine.Reading, a int) { r.Volume = &levels[a] }},
	{engine.CueVelocity, engine.TopLevel + 1, func(r *engine.Reading, a int) { r.Velocity = &levels[a] }},
	{engine.CueDensity, engine.TopLevel + 1, func(r *engine.Reading, a int) { r.Density = &levels[a] }},
	{engine.CueDarkness, engine.TopLevel + 1, func(r *engine.Reading, a int) { r.Darkness = &levels[a] }},
	{engine.CueColour, len(engine.Colours), func(r *engine.Reading, a int) { r.Colour = engine.Colours[a] }},
	{engine.CueChurning, 2, func(r *engine.Reading, a int) { r.Churning = &noYes[a] }},
	{engine.CuePulsing, 2, func(r *engine.Reading, a int) { r.Pulsing = &noYes[a] }},
	{engine.CueVanishes, 2, func(r *engine.Reading, a int) { r.Vanishes = &noYes[a] }},
	{engine.CueFlame, len(engine.FlamesSeen), func(r *engine.Reading, a int) { r.Flame = engine.FlamesSeen[a] }},
	{engine.CueWindow, len(engine.GlassesSeen), func(r *engine.Reading, a int) { r.Window = engine.GlassesSeen[a] }},
	{engine.CueNeutralPlane, len(planeAnswers), func(r *engine.Reading, a int) { r.NeutralPlane = &planeAnswers[a] }},
}

var (
	levels = [...]int{0, 1, 2, 3, 4}
	noYes  = [...]bool{false, true}
)

// open reports whether the cue was not seen at the opening and could be.
func (q *question) open(r *engine.Reading) bool {
	switch q.cue {
	case engine.CueFlow:
		return r.Flow == ""
	case engine.CueColour:
		return r.Colour == "" && r.Darkness != nil // hue is asked last
	case engine.CueChurning:
		return r.Churning == nil
	case engine.CuePulsing:
		return r.Pulsing == nil
	case engine.CueVanishes:
		return r.Vanishes == nil
	case engine.CueFlame:
		return r.Flame == ""
	case engine.CueWindow:
		return r.Window == "" && r.Kind == engine.SeenWindow
	case engine.CueNeutralPlane:
		return r.NeutralPlane == nil && (r.Flow == "" || r.Flow == engine.FlowBoth)
	}
	return r.Level(q.cue) == nil
}

// nextLook tries every answer to every cue not yet seen and returns the look that
// is expected to take most uncertainty out of the stage, or nil where none would.
func (set *Set) nextLook(s *scene, f *facts, v *verdict) *engine.NextLook {
	now := v.spread()
	before := bits(now)
	best := engine.NextLook{GainBits: leastGainBits}
	trial := set.newVerdict(len(s.now))
	for i := range s.now {
		for q := range questions {
			if !questions[q].open(&s.now[i].Reading) {
				continue
			}
			gain := before - set.expectedBits(s, f, trial, i, &questions[q], &now)
			if gain > best.GainBits || gain == best.GainBits && s.now[i].ID < best.Opening {
				best = engine.NextLook{Opening: s.now[i].ID, Cue: questions[q].cue, GainBits: gain}
			}
		}
	}
	s.refresh(f)
	if best.Opening == "" {
		return nil
	}
	return &best
}

// expectedBits is the uncertainty left, on average over the answers, each being
// as likely as the stages make it.
func (set *Set) expectedBits(s *scene, f *facts, trial *verdict, i int, q *question, now *[stageCount]float64) float64 {
	kept := s.now[i].Reading
	left := 0.0
	for answer := range q.answers {
		likely := set.answerChance(q, answer, now)
		if likely == 0 {
			continue
		}
		q.set(&s.now[i].Reading, answer)
		s.refresh(f)
		set.judge(f, trial)
		left += float64(likely * bits(trial.spread()))
		s.now[i].Reading = kept
	}
	return left
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
