// Package quiz is the vocabulary of practice: items, answers, verdicts, what a
// person's record adds up to, and the stores they need. It imports engine only
// and does no I/O.
//
// An item shows a scene and asks. What is shown hangs on its kind:
//
//   - read_opening, flow_plane, nearest_seat, call_stage: the scene at MomentS.
//   - predict_move: the scene at MomentS; after the commit Question.Move is made
//     and the fire watched, beside its twin that is left alone.
//   - two_looks: the scene at LookS[0], then at LookS[1], which is MomentS.
//   - which_of_two: the scene at MomentS, and Second at its own moment.
//   - call_out: the scene runs from Watch.FromS to Watch.ToS. A person reports at a
//     time, or lets it run to its end and so says that there was nothing to report.
//
// Each ask is answered by the one field of Reply that bears its kind's name:
// level, flow, plane, stage, regime, change, opening (one of Item.Show), trend,
// pick, and for a moment either at_s or quiet. Or by unsure.
//
// How sure one is, is asked of every item with a choice among its asks
// (AskKind.Choice), once, of all its choices together: of calls, of what will
// change, of what is called out; of ratings alone it is not.
//
// Every text that the engine gives is a key of sentences until content/wording
// (here) or pwa/src/worker/sentences.ts (on the phone) puts it into words.
package quiz

import "lintel/engine"

// ItemKind is what an item asks a person to do.
type ItemKind string

// The kinds of item.
const (
	ReadOpening ItemKind = "read_opening" // rate one opening
	FlowPlane   ItemKind = "flow_plane"   // which way, and where the neutral plane sits
	NearestSeat ItemKind = "nearest_seat" // which opening is nearest to the seat of the fire
	CallStage   ItemKind = "call_stage"   // stage and regime
	PredictMove ItemKind = "predict_move" // what changes if this opens or shuts
	TwoLooks    ItemKind = "two_looks"    // better, same or worse between two looks
	WhichOfTwo  ItemKind = "which_of_two" // a contrasting pair: which one shows it
	CallOut     ItemKind = "call_out"     // report at the moment at which a condition first holds
)

// ItemKinds lists every kind.
var ItemKinds = []ItemKind{ReadOpening, FlowPlane, NearestSeat, CallStage, PredictMove, TwoLooks, WhichOfTwo, CallOut}

// AskKind is the shape of one answer.
type AskKind string

// The shapes of answer.
const (
	AskLevel   AskKind = "level"   // an ordinal cue, 0 to engine.TopLevel
	AskFlow    AskKind = "flow"    // in, out, both or none
	AskPlane   AskKind = "plane"   // fraction of opening height
	AskStage   AskKind = "stage"   // one stage
	AskRegime  AskKind = "regime"  // one regime
	AskChange  AskKind = "change"  // less, same or more
	AskOpening AskKind = "opening" // one of the openings shown
	AskTrend   AskKind = "trend"   // better, steady or worse
	AskPick    AskKind = "pick"    // the first or the second scene
	AskMoment  AskKind = "moment"  // a time in the scene, or none
)

// Choice tells the asks with one right answer among several from the ratings of a
// level and of a plane, which are estimates. A choice is right or wrong, so it can
// be asked how sure one is of it; an estimate is scored by how far off it is.
func (k AskKind) Choice() bool { return k != AskLevel && k != AskPlane }

// AskKinds lists every shape.
var AskKinds = []AskKind{AskLevel, AskFlow, AskPlane, AskStage, AskRegime, AskChange, AskOpening, AskTrend, AskPick, AskMoment}

// Change is a predicted or true direction of change.
type Change string

// The changes.
const (
	Less Change = "less"
	Same Change = "same"
	More Change = "more"
)

// Trend is how a fire stands against how it stood.
type Trend string

// The trends, in the words of Finding.Trend.
const (
	Better Trend = "better"
	Steady Trend = "steady"
	Worse  Trend = "worse"
)

// Pick is one of two scenes.
type Pick string

// The two.
const (
	First  Pick = "first"
	Second Pick = "second"
)

// Light is what a scene is seen in: a pale sky behind it, or a dark one.
type Light string

// The lights.
const (
	Day   Light = "day"
	Dusk  Light = "dusk"
	Night Light = "night"
)

// Contrast is what sets the two scenes of a pair apart: two stages, the two regimes,
// two patterns of flow, or two levels of one cue. It is made from what a person
// confuses, and given to Make beside family and seed. Exactly one of the pairs is
// filled, with two of its kind.
type Contrast struct {
	Stages  []engine.Stage  `json:"stages,omitempty"`
	Regimes []engine.Regime `json:"regimes,omitempty"`
	Flows   []engine.Flow   `json:"flows,omitempty"`
	Cue     engine.Cue      `json:"cue,omitempty"`
	Levels  []int           `json:"levels,omitempty"`
}
