package item

import (
	"lintel/engine"
	"lintel/quiz"
)

// question puts a family's asks into the words that a person reads: what stands
// open out of sight and how the smoke was before come before what is asked.
func (f *Family) question(scene *engine.Scenario, before string) quiz.Question {
	q := quiz.Question{Text: f.Text}
	for _, told := range []string{before, f.hidden(scene)} {
		if told != "" {
			q.Text = told + " " + q.Text
		}
	}
	for _, a := range f.Asks {
		q.Asks = append(q.Asks, quiz.Ask{ID: a.id(), Kind: a.Kind, Cue: a.Cue, Opening: a.Opening, Text: a.words()})
	}
	if f.Move != nil {
		move := f.Move.Move
		q.Move = &move
	}
	return q
}

// id names an ask within its item: what is asked, and where.
func (a Ask) id() string {
	id := string(a.Kind)
	if a.Cue != "" {
		id += ":" + string(a.Cue)
	}
	if a.Opening != "" {
		id += "@" + a.Opening
	}
	return id
}

// words is the usual wording of an ask, for a family that gives none.
func (a Ask) words() string {
	if a.Text != "" {
		return a.Text
	}
	switch a.Kind {
	case quiz.AskFlow:
		return "Which way does the gas move here?"
	case quiz.AskPlane:
		return "Where does the neutral plane sit? Put it at the foot if all of it goes out, at the head if all of it goes in."
	case quiz.AskStage:
		return "Which stage is this fire in?"
	case quiz.AskRegime:
		return "What limits the fire now, its fuel or its air?"
	case quiz.AskChange:
		return cueName(a.Cue) + ": less, the same or more afterwards?"
	}
	return cueName(a.Cue) + "?"
}

// cueName is a cue in words that can begin a sentence.
func cueName(c engine.Cue) string {
	switch c {
	case engine.CueVolume:
		return "Volume of smoke"
	case engine.CueVelocity:
		return "Velocity of the smoke"
	case engine.CueDensity:
		return "Density (thickness) of the smoke"
	case engine.CueDarkness:
		return "Darkness of the smoke"
	case engine.CueNeutralPlane:
		return "Height of the neutral plane"
	}
	return string(c)
}
