package quiz

import "lintel/engine"

// Reply answers one ask. Exactly one field besides Ask is set; Unsure means
// "cannot tell", and Quiet that nothing was reported up to the end of a watch.
type Reply struct {
	Ask     string        `json:"ask"`
	Level   *int          `json:"level,omitempty"`
	Flow    engine.Flow   `json:"flow,omitempty"`
	Plane   *float64      `json:"plane,omitempty"`
	Stage   engine.Stage  `json:"stage,omitempty"`
	Regime  engine.Regime `json:"regime,omitempty"`
	Change  Change        `json:"change,omitempty"`
	Opening string        `json:"opening,omitempty"`
	Trend   Trend         `json:"trend,omitempty"`
	Pick    Pick          `json:"pick,omitempty"`
	AtS     *float64      `json:"at_s,omitempty"` // time in the scene, s
	Quiet   bool          `json:"quiet,omitempty"`
	EventS  *float64      `json:"event_s,omitempty"` // of a truth alone: when the event came, after which a report is late
	Unsure  bool          `json:"unsure,omitempty"`
}

// Answer is one committed attempt at an item. Contrast is the item's, and Own what it
// was made from where an instructor sketched it. Confidence is 0.5 to 1 where the
// item has a choice to be sure of, else nil. TookS is the time from first
// sight to commit.
type Answer struct {
	V          int       `json:"v"`
	Engine     string    `json:"engine"`
	Content    string    `json:"content"`
	Family     string    `json:"family"`
	Seed       uint64    `json:"seed"`
	Contrast   *Contrast `json:"contrast,omitempty"`
	Own        *Own      `json:"own,omitempty"`
	Replies    []Reply   `json:"replies"`
	Confidence *float64  `json:"confidence,omitempty"`
	TookS      float64   `json:"took_s"`
}

// Scene is the scene that an answer is an answer to.
func (a *Answer) Scene() Scene {
	return Scene{Family: a.Family, Seed: a.Seed, Contrast: a.Contrast, Own: a.Own}
}

// Signal is how a report compares with whether there was something to report,
// as signal detection has it.
type Signal string

// The four.
const (
	Hit              Signal = "hit"
	Miss             Signal = "miss"
	FalseAlarm       Signal = "false_alarm"
	CorrectRejection Signal = "correct_rejection"
)

// Part is the verdict on one ask: what was given, what was true (every
// acceptable value where the trade's sources disagree), and the error from 0
// (right) to 1 (as wrong as can be). Steps is the signed ordinal error (positive
// reads too heavy), nil where the ask is not ordinal or was not answered.
type Part struct {
	Ask    string     `json:"ask"`
	Kind   AskKind    `json:"kind,omitempty"`
	Cue    engine.Cue `json:"cue,omitempty"`
	Given  Reply      `json:"given"`
	Truth  []Reply    `json:"truth"`
	Error  float64    `json:"error"`
	Steps  *int       `json:"steps,omitempty"`
	Right  bool       `json:"right"`
	Remark string     `json:"remark"`
	Signal Signal     `json:"signal,omitempty"`  // of a moment
	EventS *float64   `json:"event_s,omitempty"` // of a moment: when the event came, nil where none did
	LeadS  *float64   `json:"lead_s,omitempty"`  // of a hit: how long before the event it was reported
}

// Verdict is the score of an answer with its explanation.
type Verdict struct {
	V       int             `json:"v"`
	Engine  string          `json:"engine"`
	Parts   []Part          `json:"parts"`
	Score   float64         `json:"score"` // 0 to 1
	Brier   *float64        `json:"brier,omitempty"`
	Overlap *float64        `json:"overlap,omitempty"` // of a call: what it has in common with the truth, over all that either names
	Why     string          `json:"why"`               // one line
	Rule    string          `json:"rule"`              // the rule's plain text
	Source  string          `json:"source"`            // its source
	Tell    string          `json:"tell"`              // the cue that would have told
	Exact   engine.Readings `json:"exact"`             // the true ratings at the moment
}
