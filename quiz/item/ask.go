package item

import (
	"lintel/engine"
	"lintel/quiz"
)

// Words is where one of the family's own texts stands in the catalogue.
func (f *Family) Words(of string) string { return "family/" + f.ID + "/" + of }

// question puts a family's asks together: what stands open out of sight and how
// the smoke was before come before what is asked.
func (f *Family) question(scene *engine.Scenario, before string) quiz.Question {
	q := quiz.Question{Text: engine.Sentences(f.hidden(scene), before, f.Words("text"))}
	for _, a := range f.Asks {
		q.Asks = append(q.Asks, quiz.Ask{ID: a.ID(), Kind: a.Kind, Cue: a.Cue, Opening: a.Opening, Text: f.Words("ask/"+a.ID()) + "?" + a.usual()})
	}
	if f.Move != nil {
		move := f.Move.Move
		q.Move, q.AfterS = &move, f.Move.AfterS
	}
	return q
}

// ID names an ask within its item: what is asked, and where.
func (a Ask) ID() string {
	id := string(a.Kind)
	if a.Cue != "" {
		id += ":" + string(a.Cue)
	}
	if a.Opening != "" {
		id += "@" + a.Opening
	}
	return id
}

// usual is the wording of an ask for a family that gives none of its own.
func (a Ask) usual() string {
	if a.Cue != "" {
		return "ask/" + string(a.Kind) + "/" + string(a.Cue)
	}
	return "ask/" + string(a.Kind)
}
