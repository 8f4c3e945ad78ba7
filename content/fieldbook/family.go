package fieldbook

import (
	"lintel/engine"
	"lintel/quiz"
)

// FamilyWords is what people read of a family. Title and Text must not give the
// answer away: a person sees both first.
type FamilyWords struct {
	ID       string            `json:"-"`
	Title    string            `json:"title"`
	Text     string            `json:"text"`               // what is asked, in a sentence
	Tell     string            `json:"tell"`               // the cue that would have told
	Outcomes []Outcome         `json:"outcomes,omitempty"` // the family's own lines of explanation
	Asks     map[string]string `json:"-"`                  // own wording of asks, by their id
}

// Outcome is why one answer to one kind of ask came true, in a line, and what
// would have told it. Cue is given for a change only, Is where the answer is one of
// a few words. What a family says of its own asks comes before what content says
// of all.
type Outcome struct {
	Ask  quiz.AskKind `json:"ask"`
	Cue  engine.Cue   `json:"cue,omitempty"`
	Is   string       `json:"is,omitempty"` // the stage, regime, flow or change that came true
	Why  string       `json:"why"`
	Tell string       `json:"tell,omitempty"`
}
