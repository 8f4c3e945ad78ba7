package item

import (
	"strconv"

	"lintel/engine"
	"lintel/quiz"
)

// Family is a recipe of scenes that share one lesson, as content holds it. Its
// words stand in the catalogue of sentences, under "family/" and its ID.
type Family struct {
	ID     string          `json:"id"`
	Lesson string          `json:"lesson"` // id in content/lessons
	Rule   string          `json:"rule"`   // id in content/rules
	Kind   quiz.ItemKind   `json:"kind"`
	Scene  engine.Scenario `json:"scene"`
	Vary   []Vary          `json:"vary"`
	Moment Window          `json:"moment"`
	Show   []string        `json:"show"` // openings to look at, the asked one first
	Asks   []Ask           `json:"asks"`
	Need   []Need          `json:"need,omitempty"` // what a scene must show to be about this lesson
	Move   *Prediction     `json:"move,omitempty"` // for predict_move

	// BeforeS is how long before its moment a call tells of the smoke, s.
	BeforeS float64 `json:"before_s,omitempty"`
	// GapS is how long before its moment the first of two looks lies, s.
	GapS float64 `json:"gap_s,omitempty"`
	// Pairs are the contrasts that a which_of_two family can show.
	Pairs []quiz.Contrast `json:"pairs,omitempty"`
	// Lights are what a scene may be seen in, where that is part of the lesson.
	Lights []quiz.Light `json:"lights,omitempty"`
	// Watch is what a call_out family plays and wants to be reported.
	Watch *Watch `json:"watch,omitempty"`
}

// Knob is something of a scene that a family may vary.
type Knob string

// The knobs. A factor multiplies what the scene says, the others replace it.
const (
	RoomSize      Knob = "room_size"      // factor on width and depth of the room ID
	OpeningWidth  Knob = "opening_width"  // m, of the opening ID
	OpeningHeight Knob = "opening_height" // m
	OpeningSill   Knob = "opening_sill"   // m
	OpeningShare  Knob = "open"           // 0 to 1
	FuelMass      Knob = "fuel_mass"      // factor on the fuel ID
	FuelOf        Knob = "fuel_kind"      // kind of the fuel ID, one of Words
	FuelRoom      Knob = "fuel_room"      // compartment of the fuel ID, one of Words
	BurnerPower   Knob = "burner_power"   // factor on the burner ID
	MoveTime      Knob = "move_time"      // s added to every move
	MoveWater     Knob = "move_water"     // factor on every move's water
	MoveWind      Knob = "move_wind"      // m/s, of every move that changes the wind
	WindSpeed     Knob = "wind"           // m/s
	WindSide      Knob = "wind_from"      // the side it blows onto, one of Words
	AirTemp       Knob = "air_c"          // C
)

// Knobs lists every knob.
var Knobs = []Knob{RoomSize, OpeningWidth, OpeningHeight, OpeningSill, OpeningShare, FuelMass, FuelOf, FuelRoom, BurnerPower, MoveTime, MoveWater, MoveWind, WindSpeed, WindSide, AirTemp}

// Vary draws one value evenly from Low to High, both included, in steps of Step
// counted from Low, so that a scene's numbers stay short. A knob that takes a
// word draws one of Words.
type Vary struct {
	Knob  Knob     `json:"knob"`
	ID    string   `json:"id,omitempty"`
	Low   float64  `json:"low,omitempty"`
	High  float64  `json:"high,omitempty"`
	Step  float64  `json:"step,omitempty"`
	Words []string `json:"words,omitempty"`
}

// Window is when a scene may be looked at, in seconds from the start.
type Window struct {
	FromS float64 `json:"from_s"`
	ToS   float64 `json:"to_s"`
}

// Ask is one question. Cue is needed for a level and for a change.
type Ask struct {
	Kind    quiz.AskKind `json:"kind"`
	Cue     engine.Cue   `json:"cue,omitempty"`
	Opening string       `json:"opening,omitempty"`
	// Despite says of AskOpening that the fastest opening need not be the nearest:
	// the family is about what misleads.
	Despite bool `json:"despite,omitempty"`
}

// Watch is what is played of a scene and what is to be reported: the moment at
// which everything of For holds. After Before has come a report is late.
type Watch struct {
	LastS  float64  `json:"last_s"`
	For    []Need   `json:"for"`
	Before []string `json:"before,omitempty"` // kinds of event, and stages
}

// Need is one thing that a scene must show at its moment, or be thrown away.
type Need struct {
	Opening string          `json:"opening,omitempty"`
	Flow    []engine.Flow   `json:"flow,omitempty"`
	Cue     engine.Cue      `json:"cue,omitempty"` // an ordinal cue, from Low to High
	Low     int             `json:"low,omitempty"`
	High    int             `json:"high,omitempty"`
	Stage   []engine.Stage  `json:"stage,omitempty"`
	Regime  []engine.Regime `json:"regime,omitempty"`
	Pulsing bool            `json:"pulsing,omitempty"` // at the opening
	Flame   bool            `json:"flame,omitempty"`   // in the opening
}

// Prediction is the move that a person must foresee, and how long after it the
// change is judged.
type Prediction struct {
	Move   engine.Move `json:"move"`
	AfterS float64     `json:"after_s"`
}

func (f *Family) where(list string, i int) string {
	return "family " + f.ID + " " + list + "[" + strconv.Itoa(i) + "]"
}
