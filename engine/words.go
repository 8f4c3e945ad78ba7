package engine

import "slices"

// Side names a face of a building, clockwise from the address side, as in ICS
// structure-fire practice (FIRESCOPE ICS-500; from memory, to be confirmed).
type Side string

// The four sides: Alpha is the address side, Bravo is on its left.
const (
	Alpha   Side = "A"
	Bravo   Side = "B"
	Charlie Side = "C"
	Delta   Side = "D"
)

// Sides lists the sides clockwise from Alpha.
var Sides = []Side{Alpha, Bravo, Charlie, Delta}

// Flow is what gas does at one opening, seen over its whole area.
type Flow string

// The flows of NFPA 1700 (from memory, to be confirmed): an inlet, an outlet,
// bidirectional, and none. The empty Flow means "not seen".
const (
	FlowIn   Flow = "in"
	FlowOut  Flow = "out"
	FlowBoth Flow = "both"
	FlowNone Flow = "none"
)

// Flows lists every flow.
var Flows = []Flow{FlowIn, FlowOut, FlowBoth, FlowNone}

// Stage is a stage of fire development. Undetermined is a reader's answer and
// is never the truth.
type Stage string

// The stages, in the order in which a fire starved of air and then put out
// would pass through them.
const (
	Incipient        Stage = "incipient"
	Growth           Stage = "growth"
	PreFlashover     Stage = "pre_flashover"
	FullyDeveloped   Stage = "fully_developed"
	VentilationDecay Stage = "ventilation_limited_decay"
	Decay            Stage = "decay"
	AfterKnockDown   Stage = "after_knock_down"
	Undetermined     Stage = "undetermined"
)

// Stages lists every stage, Undetermined last.
var Stages = []Stage{Incipient, Growth, PreFlashover, FullyDeveloped, VentilationDecay, Decay, AfterKnockDown, Undetermined}

// Regime says what sets the fire's size: its fuel or its air.
type Regime string

// The two regimes.
const (
	FuelLimited        Regime = "fuel_limited"
	VentilationLimited Regime = "ventilation_limited"
)

// Regimes lists both.
var Regimes = []Regime{FuelLimited, VentilationLimited}

// Hazard is a rapid fire event.
type Hazard string

// The rapid fire events that a finding may hold conditions for.
const (
	Flashover            Hazard = "flashover"
	VentilationFlashover Hazard = "ventilation_induced_flashover"
	Backdraft            Hazard = "backdraft"
	SmokeExplosion       Hazard = "smoke_explosion"
)

// Hazards lists every hazard.
var Hazards = []Hazard{Flashover, VentilationFlashover, Backdraft, SmokeExplosion}

// Colour is the hue of smoke at the opening. It never decides a score; the
// ordinal side of colour is a reading's darkness.
type Colour string

// The hues a person may name.
const (
	White      Colour = "white"
	LightGrey  Colour = "light_grey"
	Grey       Colour = "grey"
	Brown      Colour = "brown"
	YellowGrey Colour = "yellow_grey"
	DarkGrey   Colour = "dark_grey"
	Black      Colour = "black"
)

// Colours lists the hues from pale to black, with the two tinted ones where
// their usual darkness puts them.
var Colours = []Colour{White, LightGrey, Grey, Brown, YellowGrey, DarkGrey, Black}

// Known reports whether x is one of list.
func Known[T comparable](x T, list []T) bool { return slices.Contains(list, x) }

// OneOf spells a list of words for an error line: "a, b or c".
func OneOf[T ~string](list []T) string {
	line := ""
	for i, word := range list {
		switch {
		case i == 0:
		case i == len(list)-1:
			line += " or "
		default:
			line += ", "
		}
		line += string(word)
	}
	return line
}
