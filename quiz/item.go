package quiz

import "lintel/engine"

// Ask is one question of an item. Items are answered one ask at a time.
type Ask struct {
	ID      string     `json:"id"`
	Kind    AskKind    `json:"kind"`
	Cue     engine.Cue `json:"cue,omitempty"`
	Opening string     `json:"opening,omitempty"`
	Text    string     `json:"text"`
	Choice  bool       `json:"choice,omitempty"` // whether to ask how sure one is of it
	Watch   *Span      `json:"watch,omitempty"`  // of a moment: what of the scene is played, since when its times are told
}

// Question is what an item asks: a sentence, the asks in order, and for a
// predict_move item the move that will be made and how long after it is judged.
type Question struct {
	Text   string       `json:"text"`
	Asks   []Ask        `json:"asks"`
	Move   *engine.Move `json:"move,omitempty"`
	AfterS float64      `json:"after_s,omitempty"`
}

// Item is a family, a seed and a moment made into a scene and a question. It is
// wholly determined by Family, Seed, Contrast, Engine and Content.
type Item struct {
	V        int             `json:"v"`
	Engine   string          `json:"engine"`
	Content  string          `json:"content"`
	Family   string          `json:"family"`
	Seed     uint64          `json:"seed"`
	Contrast *Contrast       `json:"contrast,omitempty"` // which_of_two: what sets the scenes apart
	MomentS  float64         `json:"moment_s"`
	Kind     ItemKind        `json:"kind"`
	Title    string          `json:"title"`
	Scenario engine.Scenario `json:"scenario"`
	Show     []string        `json:"show"`             // openings to look at, the asked one first
	Light    Light           `json:"light,omitempty"`  // what it is seen in, where that is part of the lesson
	LookS    []float64       `json:"look_s,omitempty"` // two_looks: the times of the two looks, the earlier first
	Second   *Moment         `json:"second,omitempty"` // which_of_two: the second scene
	Watch    *Span           `json:"watch,omitempty"`  // call_out: what of the scene is played
	Question Question        `json:"question"`
}

// Moment is a scene at one time.
type Moment struct {
	Scenario engine.Scenario `json:"scenario"`
	MomentS  float64         `json:"moment_s"`
}

// Span is a stretch of a scene's time, in seconds from its start.
type Span struct {
	FromS float64 `json:"from_s"`
	ToS   float64 `json:"to_s"`
}

// Scene names an item that can be made: what a set or a test form is a list of.
// Own is the whole of one that an instructor sketched, whose family is OwnFamily.
type Scene struct {
	Family   string    `json:"family"`
	Seed     uint64    `json:"seed"`
	Contrast *Contrast `json:"contrast,omitempty"`
	Own      *Own      `json:"own,omitempty"`
}

// FormKind is one of the tests that stand before, after and long after a course.
type FormKind string

// The forms. No scene of one is in another, nor in any drill.
const (
	FormPre     FormKind = "pre"
	FormPost    FormKind = "post"
	FormDelayed FormKind = "delayed"
)

// FormKinds lists every form.
var FormKinds = []FormKind{FormPre, FormPost, FormDelayed}

// FirstTestSeed parts the seeds: those below it are for drills, those from it on
// for test forms. A drill may draw any seed below it.
const FirstTestSeed = 1 << 52
