package item

import (
	"lintel/engine"
	"lintel/quiz"
)

// Outcome is why one answer to one kind of ask came true, in a line, and what
// would have told it. Cue is given for a change only. What a family says of its
// own asks comes before what content says of all.
type Outcome struct {
	Ask  quiz.AskKind `json:"ask"`
	Cue  engine.Cue   `json:"cue,omitempty"`
	Is   string       `json:"is"` // the stage, regime, flow or change that came true
	Why  string       `json:"why"`
	Tell string       `json:"tell,omitempty"`
}

// Explains reports whether the outcome is of this ask and of what was true.
func (o *Outcome) Explains(ask *quiz.Ask, truth *quiz.Reply) bool {
	if o.Ask != ask.Kind || o.Cue != "" && o.Cue != ask.Cue {
		return false
	}
	switch ask.Kind {
	case quiz.AskFlow:
		return o.Is == string(truth.Flow)
	case quiz.AskStage:
		return o.Is == string(truth.Stage)
	case quiz.AskRegime:
		return o.Is == string(truth.Regime)
	case quiz.AskChange:
		return o.Is == string(truth.Change)
	}
	return false
}
