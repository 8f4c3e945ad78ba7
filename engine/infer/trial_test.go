package infer

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"lintel/engine"
)

// A trial of an answer must come to what reading that answer comes to.
func TestATrialAgreesWithReadingAgain(t *testing.T) {
	set, rng := withSettledFlow(t), rand.New(rand.NewPCG(5, 6))
	tried := 0
	for range 150 {
		r := randomReadings(rng)
		r.Plan = nil
		s := newScene(r)
		f := s.gather()
		v := set.newVerdict(len(s.now))
		set.judge(f, v)
		trial := newTrial(set, s, f, v)
		for i := range s.now {
			for q := range questions {
				if !questions[q].open(&s.now[i], &f.openings[i]) {
					continue
				}
				answer := rng.IntN(questions[q].answers)
				trial.suppose(i, &questions[q], questions[q].value(answer))
				trial.judge()
				require.Equal(t, readAgain(set, r, i, questions[q].cue, answer), trial.v.spread(), "%s %d", questions[q].cue, answer)
				tried++
			}
		}
	}
	require.Greater(t, tried, 1000)
}

// withSettledFlow adds to the small set a rule on what follows from two cues of an
// opening together with how it stands.
func withSettledFlow(t *testing.T) *Set {
	t.Helper()
	rules := []Rule{{ID: "shut in", At: AtOpening, When: []string{"darkness >= 2"}, Unless: []string{"settled two-way flow"}, Confidence: High, Supports: []engine.Stage{engine.VentilationDecay}, Sources: []string{"x"}}}
	for _, r := range smallSet(t, Priors{}).Rules() {
		rules = append(rules, *r)
	}
	set, err := NewSet(rules, nil, Priors{Cover: 0.95})
	require.NoError(t, err)
	return set
}

// readAgain reads the readings with one more answer in them.
func readAgain(set *Set, r engine.Readings, opening int, cue engine.Cue, answer int) [stageCount]float64 {
	last := &r.Looks[len(r.Looks)-1]
	kept := last.Openings[opening]
	answered(&last.Openings[opening], cue, answer)
	s := newScene(r)
	f := s.gather()
	v := set.newVerdict(len(s.now))
	set.judge(f, v)
	last.Openings[opening] = kept
	return v.spread()
}

func answered(r *engine.Reading, cue engine.Cue, a int) {
	switch cue {
	case engine.CueFlow:
		r.Flow = engine.Flows[a]
	case engine.CueVolume:
		r.Volume = &a
	case engine.CueVelocity:
		r.Velocity = &a
	case engine.CueDensity:
		r.Density = &a
	case engine.CueDarkness:
		r.Darkness = &a
	case engine.CueColour:
		r.Colour = engine.Colours[a]
	case engine.CueChurning:
		r.Churning = new(a == 1)
	case engine.CuePulsing:
		r.Pulsing = new(a == 1)
	case engine.CueVanishes:
		r.Vanishes = new(a == 1)
	case engine.CueFlame:
		r.Flame = engine.FlamesSeen[a]
	case engine.CueWindow:
		r.Window = engine.GlassesSeen[a]
	case engine.CueNeutralPlane:
		r.NeutralPlane = &planeAnswers[a]
	}
}
