package quiz

import (
	"errors"
	"slices"
	"strconv"

	"lintel/engine"
)

// OwnFamily is the family that a scene of an instructor's own goes by. It has no
// recipe: the scene comes whole, and its seed only tells it from others.
const OwnFamily = "own"

// OwnKinds are the kinds of item that a scene of one's own can be.
var OwnKinds = []ItemKind{ReadOpening, FlowPlane, NearestSeat, CallStage}

// Limits of such a scene, chosen by us: it travels to every phone of a class, and
// a slow phone lets it burn to its moment in a few seconds.
const (
	MaxOwnMoves = 120  // moves, and points of burners' powers
	MaxOwnS     = 1800 // s to its moment
)

// Own is a scene that an instructor sketched: what burns, the moment at which it is
// looked at, and what is asked of it. Opening is the one that read_opening and
// flow_plane ask about.
type Own struct {
	Title    string          `json:"title"`
	Scenario engine.Scenario `json:"scenario"`
	MomentS  float64         `json:"moment_s"`
	Kind     ItemKind        `json:"kind"`
	Opening  string          `json:"opening,omitempty"`
}

// AsksOne reports whether one opening is asked about.
func (o *Own) AsksOne() bool { return o.Kind == ReadOpening || o.Kind == FlowPlane }

// Check looks for everything that can be judged without letting the scene burn.
// Where is its path in what was sent.
func (o *Own) Check(where string) error {
	size := len(o.Scenario.Moves)
	for i := range o.Scenario.Fuels {
		size += len(o.Scenario.Fuels[i].HRRKW)
	}
	switch {
	case !IsTitle(o.Title):
		return engine.Bad(where+".title", "is empty, too long or holds control characters", "give 1 to "+strconv.Itoa(MaxTitle)+" characters")
	case !engine.Known(o.Kind, OwnKinds):
		return engine.Bad(where+".kind", "is "+string(o.Kind), "use "+engine.OneOf(OwnKinds))
	case !(o.MomentS >= 0 && o.MomentS <= MaxOwnS):
		return engine.Bad(where+".moment_s", "is not from 0 to "+strconv.Itoa(MaxOwnS), "look at the scene within its first "+strconv.Itoa(MaxOwnS/60)+" minutes")
	case size > MaxOwnMoves:
		return engine.Bad(where+".scenario.moves", "are "+strconv.Itoa(size), "keep the scene within "+strconv.Itoa(MaxOwnMoves)+" moves")
	}
	if err := o.Scenario.Validate(); err != nil {
		return within(where+".scenario.", err)
	}
	switch {
	case o.AsksOne() && !slices.Contains(o.Outer(), o.Opening):
		return engine.Bad(where+".opening", "is not an opening in an outer wall of the scene", "name one of those")
	case !o.AsksOne() && o.Opening != "":
		return engine.Bad(where+".opening", "does not belong here", "leave it out, as no single opening is asked about")
	}
	return nil
}

// Outer lists the openings that one sees from outside: those in a wall to the open
// air.
func (o *Own) Outer() []string {
	var outer []string
	for i := range o.Scenario.Openings {
		if opening := &o.Scenario.Openings[i]; opening.To == engine.Outside && opening.Side != "" {
			outer = append(outer, opening.ID)
		}
	}
	return outer
}

// within puts a path before the place that a problem names.
func within(path string, err error) error {
	var problem *engine.Problem
	if !errors.As(err, &problem) {
		return err
	}
	return engine.Bad(path+problem.Where, problem.What, problem.Do)
}
