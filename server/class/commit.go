package class

import (
	"encoding/json"

	"lintel/quiz"
	"lintel/quiz/score"
	"lintel/quiz/session"
)

// Lines makes the lines that go into the logs of classes with a device's events:
// one for each answer that was given in a class by somebody who is in it, judged
// here. Whatever does not fit a class is left out and stays an event like any
// other: nothing a device says is lost, and nothing it says counts unchecked.
func (c *Classes) Lines(device string, events []quiz.Event) []quiz.Line {
	var lines []quiz.Line
	for i := range events {
		if events[i].Kind != quiz.AnswerEvent {
			continue
		}
		if line := c.line(device, &events[i]); line != nil {
			lines = append(lines, *line)
		}
	}
	return lines
}

// given is what of an answer's body a class looks at.
type given struct {
	Answer quiz.Answer    `json:"answer"`
	Class  *quiz.ClassRef `json:"class"`
}

func (c *Classes) line(device string, e *quiz.Event) *quiz.Line {
	var body given
	if json.Unmarshal(e.Body, &body) != nil || body.Class == nil || !quiz.IsDeviceID(body.Class.ID) {
		return nil
	}
	entry, why := c.entry(device, e, &body)
	if why != "" {
		c.Log.Warn("answer not entered in a class", "class", body.Class.ID, "device", device, "event", e.Seq, "why", why)
		return nil
	}
	return &quiz.Line{Class: body.Class.ID, Event: e.Seq, Body: spell(entry)}
}

func (c *Classes) entry(device string, e *quiz.Event, body *given) (entry session.Entry, why string) {
	r, err := c.room(body.Class.ID)
	if err != nil {
		return entry, "no such class"
	}
	s := r.now()
	person := s.Find(device, body.Class.Place)
	scene, _ := s.SceneOf(body.Class.Scene)
	a := &body.Answer
	switch {
	case person == nil:
		return entry, "nobody joined at this place"
	case scene == nil:
		return entry, "not a scene of the class"
	case a.Family != scene.Family || a.Seed != scene.Seed:
		return entry, "an answer to another scene"
	case a.Engine != s.Class.Engine || a.Content != s.Class.Content:
		return entry, "another version than the class runs on"
	}
	if held, _ := s.MarkOf(scene.ID, person.Number); held != nil {
		return entry, "committed already"
	}
	mark, err := judge(scene, a)
	if err != nil {
		return entry, err.Error()
	}
	mark.Event = e.ID
	return session.Entry{V: session.Version, AtMS: c.Now().UnixMilli(), Kind: session.Committed, Person: person.Number, Scene: scene.ID, Answer: mark}, ""
}

// Entered settles lines that the store has made durable with their events.
func (c *Classes) Entered(lines []quiz.Line) {
	for _, line := range lines {
		r, err := c.room(line.Class)
		if err != nil {
			continue
		}
		if e, err := entryOf(line); err == nil {
			r.settle(e)
		}
	}
}

// maxTookS is what stands on paper at most for how long an answer took, s: a phone
// says that itself, and may say anything (chosen by us, as long as a class may be
// joined).
var maxTookS = OpenFor.Seconds()

// judge scores an answer by the truth that the class was opened with.
func judge(scene *session.Scene, a *quiz.Answer) (*session.Mark, error) {
	verdict, err := score.Judge(&scene.Item, scene.Truth, a)
	if err != nil {
		return nil, err
	}
	mark := &session.Mark{Score: verdict.Score, Confidence: a.Confidence, TookS: min(max(0, a.TookS), maxTookS)}
	for i := range verdict.Parts {
		p := &verdict.Parts[i]
		mark.Parts = append(mark.Parts, session.PartMark{Ask: p.Ask, Given: p.Given, Error: p.Error, Steps: p.Steps, Right: p.Right})
	}
	return mark, nil
}
