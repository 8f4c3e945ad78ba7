package item

import (
	"strconv"

	"lintel/engine"
	"lintel/quiz"
)

// Words is where one of the family's own texts stands in the catalogue.
func (f *Family) Words(of string) string { return "family/" + f.ID + "/" + of }

// question puts a family's asks together: what stands open out of sight and how
// the smoke was before come before what is asked.
func (f *Family) question(m *made) quiz.Question {
	q := quiz.Question{Text: engine.Sentences(f.hidden(&m.scene), m.truth.before, f.Words("text"))}
	for _, a := range f.Asks {
		text := f.Words("ask/"+a.ID()) + "?" + a.usual()
		if m.contrast != nil {
			a.Cue, text = m.contrast.Cue, pickText(m.contrast, m.wanted, f.Show[0])
		}
		ask := quiz.Ask{ID: a.ID(), Kind: a.Kind, Cue: a.Cue, Opening: a.Opening, Text: text, Choice: a.Kind.Choice()}
		if a.Kind == quiz.AskMoment {
			ask.Watch = m.watch
		}
		q.Asks = append(q.Asks, ask)
	}
	if f.Move != nil {
		move := f.Move.Move
		q.Move, q.AfterS = &move, f.Move.AfterS
	}
	return q
}

// pickText asks which of two scenes is on one side of a contrast.
func pickText(c *quiz.Contrast, side int, opening string) string {
	switch {
	case c.Stages != nil:
		return engine.Sentence("ask/pick/stage", engine.Slot("stage", engine.Word("stage/"+string(c.Stages[side]))))
	case c.Regimes != nil:
		return engine.Sentence("ask/pick/regime", engine.Slot("regime", engine.Word("regime/"+string(c.Regimes[side]))))
	case c.Flows != nil:
		return engine.Sentence("ask/pick/flow",
			engine.Slot("opening", engine.Word("opening/"+opening)), engine.Slot("flow", engine.Word("flow/"+string(c.Flows[side]))))
	}
	level := "scale/" + string(c.Cue) + "/" + strconv.Itoa(c.Levels[side])
	return engine.Sentence("ask/pick/level",
		engine.Slot("cue", engine.Word("scale/"+string(c.Cue))), engine.Slot("name", engine.Word(level)), engine.Slot("looks", engine.Word(level+"/looks")))
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
