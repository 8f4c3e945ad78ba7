package session_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"lintel/engine"
	"lintel/quiz"
	"lintel/quiz/session"
)

// How sure someone was is held against their choices alone: not against a plane, not
// where nothing could be told, not against a key that the instructor disagrees with.
func TestSureBesideRight(t *testing.T) {
	flowing := func(id string) session.Scene {
		s := scene(id, 0)
		s.Item.Question.Asks = append(s.Item.Question.Asks[1:], quiz.Ask{ID: "flow@door", Kind: quiz.AskFlow, Opening: "door"})
		s.Truth = [][]quiz.Reply{{{Plane: plane(0.4)}}, {{Flow: engine.FlowOut}}}
		return s
	}
	said := func(scene string, confidence float64, given quiz.Reply) session.Entry {
		return session.Entry{Kind: session.Committed, AtMS: 9000, Person: 1, Scene: scene, Answer: &session.Mark{Event: scene, Confidence: &confidence, Parts: []session.PartMark{
			{Ask: "plane@door", Given: quiz.Reply{Plane: plane(0.9)}, Error: 0.5},
			{Ask: "flow@door", Given: given, Right: given.Flow == engine.FlowOut},
		}}}
	}
	l := opened(session.Self, flowing("s1"), flowing("s2"), flowing("s3"), flowing("s4")).joined("Truck 1", "Engine 2").started(5)
	l = l.then(said("s1", 0.9, quiz.Reply{Flow: engine.FlowOut}), said("s2", 0.7, quiz.Reply{Flow: engine.FlowIn}),
		said("s3", 0.99, quiz.Reply{Unsure: true}), said("s4", 0.99, quiz.Reply{Flow: engine.FlowIn}))
	s := l.play(t)
	assert.Equal(t, 3, s.PersonReport(1).Sure.N)
	s = l.then(session.Entry{Kind: session.Disagreed, Scene: "s4", Ask: "flow@door", On: true, Note: "steam"}).play(t)
	sure := s.PersonReport(1).Sure
	assert.Equal(t, 2, sure.N)
	assert.InDelta(t, 0.8, sure.Said, 1e-12)
	assert.InDelta(t, 0.5, sure.Right, 1e-12)
	assert.Nil(t, s.PersonReport(2).Sure)
}
