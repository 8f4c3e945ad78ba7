// Package quiz is the vocabulary of practice: items, answers, verdicts and the
// stores they need. It imports engine only and does no I/O.
package quiz

import "lintel/engine"

// ItemKind is what an item asks a person to do.
type ItemKind string

// The kinds of item.
const (
	ReadOpening ItemKind = "read_opening" // rate one opening
	FlowPlane   ItemKind = "flow_plane"   // which way, and where the neutral plane sits
	CallStage   ItemKind = "call_stage"   // stage and regime, with confidence
	PredictMove ItemKind = "predict_move" // what changes if this opens or shuts
)

// ItemKinds lists every kind.
var ItemKinds = []ItemKind{ReadOpening, FlowPlane, CallStage, PredictMove}

// AskKind is the shape of one answer.
type AskKind string

// The shapes of answer.
const (
	AskLevel  AskKind = "level"  // an ordinal cue, 0 to engine.TopLevel
	AskFlow   AskKind = "flow"   // in, out, both or none
	AskPlane  AskKind = "plane"  // fraction of opening height
	AskStage  AskKind = "stage"  // one stage
	AskRegime AskKind = "regime" // one regime
	AskChange AskKind = "change" // less, same or more
)

// Ask is one question of an item. Items are answered one ask at a time.
type Ask struct {
	ID      string     `json:"id"`
	Kind    AskKind    `json:"kind"`
	Cue     engine.Cue `json:"cue,omitempty"`
	Opening string     `json:"opening,omitempty"`
	Text    string     `json:"text"`
}

// Question is what an item asks: a sentence, the asks in order, and for a
// predict_move item the move that will be made.
type Question struct {
	Text string       `json:"text"`
	Asks []Ask        `json:"asks"`
	Move *engine.Move `json:"move,omitempty"`
}

// Item is a family, a seed and a moment made into a scene and a question. It is
// wholly determined by Family, Seed, Engine and Content.
type Item struct {
	V        int             `json:"v"`
	Engine   string          `json:"engine"`
	Content  string          `json:"content"`
	Family   string          `json:"family"`
	Seed     uint64          `json:"seed"`
	MomentS  float64         `json:"moment_s"`
	Kind     ItemKind        `json:"kind"`
	Title    string          `json:"title"`
	Scenario engine.Scenario `json:"scenario"`
	Show     []string        `json:"show"` // openings to look at, the asked one first
	Question Question        `json:"question"`
}

// Change is a predicted or true direction of change.
type Change string

// The changes.
const (
	Less Change = "less"
	Same Change = "same"
	More Change = "more"
)

// Reply answers one ask. Exactly one field besides Ask is set; Unsure means
// "cannot tell".
type Reply struct {
	Ask    string        `json:"ask"`
	Level  *int          `json:"level,omitempty"`
	Flow   engine.Flow   `json:"flow,omitempty"`
	Plane  *float64      `json:"plane,omitempty"`
	Stage  engine.Stage  `json:"stage,omitempty"`
	Regime engine.Regime `json:"regime,omitempty"`
	Change Change        `json:"change,omitempty"`
	Unsure bool          `json:"unsure,omitempty"`
}

// Answer is one committed attempt at an item. Confidence is 0.5 to 1 where the
// item asks for it, else nil. TookS is the time from first sight to commit.
type Answer struct {
	V          int      `json:"v"`
	Engine     string   `json:"engine"`
	Content    string   `json:"content"`
	Family     string   `json:"family"`
	Seed       uint64   `json:"seed"`
	Replies    []Reply  `json:"replies"`
	Confidence *float64 `json:"confidence,omitempty"`
	TookS      float64  `json:"took_s"`
}

// Part is the verdict on one ask: what was given, what was true (every
// acceptable value where the trade's sources disagree), and the error from 0
// (right) to 1 (as wrong as can be). Steps is the signed ordinal error (positive
// reads too heavy), nil where the ask is not ordinal or was not answered.
type Part struct {
	Ask    string  `json:"ask"`
	Given  Reply   `json:"given"`
	Truth  []Reply `json:"truth"`
	Error  float64 `json:"error"`
	Steps  *int    `json:"steps,omitempty"`
	Right  bool    `json:"right"`
	Remark string  `json:"remark"`
}

// Verdict is the score of an answer with its explanation.
type Verdict struct {
	V      int             `json:"v"`
	Engine string          `json:"engine"`
	Parts  []Part          `json:"parts"`
	Score  float64         `json:"score"` // 0 to 1
	Brier  *float64        `json:"brier,omitempty"`
	Why    string          `json:"why"`    // one line
	Rule   string          `json:"rule"`   // the rule's plain text
	Source string          `json:"source"` // its source
	Tell   string          `json:"tell"`   // the cue that would have told
	Exact  engine.Readings `json:"exact"`  // the true ratings at the moment
}
