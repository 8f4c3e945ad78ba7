package session_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"lintel/engine"
	"lintel/quiz"
	"lintel/quiz/session"
)

func level(n int) *int         { return &n }
func plane(x float64) *float64 { return &x }

// scene asks for volume (true: 3) and for the neutral plane (true: 0.4).
func scene(id string, lookS int) session.Scene {
	return session.Scene{
		ID: id, Planned: session.Planned{Family: "family-" + id, Seed: 7, LookS: lookS, Note: "ask why"},
		Item: quiz.Item{Kind: quiz.FlowPlane, Question: quiz.Question{Asks: []quiz.Ask{
			{ID: "level:volume@door", Kind: quiz.AskLevel, Cue: engine.CueVolume, Opening: "door"},
			{ID: "plane@door", Kind: quiz.AskPlane, Opening: "door"},
		}}},
		Truth: [][]quiz.Reply{{{Level: level(3)}}, {{Plane: plane(0.4)}}},
	}
}

// mark rates the volume and puts the plane where it is.
func mark(event string, volume int) *session.Mark {
	steps := volume - 3
	away := float64(max(steps, -steps)) / engine.TopLevel
	return &session.Mark{Event: event, Score: 1 - away/2, TookS: 4, Parts: []session.PartMark{
		{Ask: "level:volume@door", Given: quiz.Reply{Ask: "level:volume@door", Level: level(volume)}, Error: away, Steps: &steps, Right: steps == 0},
		{Ask: "plane@door", Given: quiz.Reply{Ask: "plane@door", Plane: plane(0.4)}, Right: true},
	}}
}

// log makes a log line by line; seq and version are filled in.
type log []session.Entry

func opened(pace session.Pace, scenes ...session.Scene) log {
	return log{{Kind: session.Opened, AtMS: 1000, Class: &session.Class{ID: "c", Title: "Tuesday", Pace: pace, Engine: "1", Content: "k"}, Scenes: scenes}}
}

func (l log) then(more ...session.Entry) log { return append(append(log{}, l...), more...) }

func (l log) joined(signs ...string) log {
	for _, sign := range signs {
		l = l.then(session.Entry{Kind: session.Joined, AtMS: 2000, Member: &session.Member{CallSign: sign, Device: "device " + sign, Place: session.FirstPlace}})
	}
	return l
}

func (l log) committed(scene string, person, volume int) log {
	return l.then(session.Entry{Kind: session.Committed, AtMS: 9000, Person: person, Scene: scene, Answer: mark("e", volume)})
}

func (l log) to(atMS int64, step session.Step, scene string) log {
	return l.then(session.Entry{Kind: session.Stepped, AtMS: atMS, To: step, Scene: scene})
}

func (l log) started(atMS int64) log { return l.then(session.Entry{Kind: session.Started, AtMS: atMS}) }

// play applies a whole log and fails at the first refusal.
func (l log) play(t *testing.T) session.State {
	t.Helper()
	var s session.State
	for i, e := range l {
		e.V, e.Seq = session.Version, uint64(i+1)
		next, err := session.Apply(s, e)
		require.NoError(t, err, "entry %d, %s", i+1, e.Kind)
		s = next
	}
	return s
}

// next is an entry that follows a state.
func next(s session.State, e session.Entry) session.Entry {
	e.V, e.Seq = session.Version, s.Seq+1
	return e
}
