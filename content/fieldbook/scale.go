package fieldbook

import "lintel/engine"

// ScaleBook is content/scales/scales.yaml: what each level looks like, and where
// the engine cuts the measure beneath it.
type ScaleBook struct {
	Note       string       `json:"note"`
	Scales     []ScaleWords `json:"scales"`
	Thresholds []Threshold  `json:"thresholds"`
	Hues       []HueWords   `json:"hues"`
}

// ScaleWords is one ordinal cue, in words and in numbers.
type ScaleWords struct {
	Cue        engine.Cue   `json:"cue"`
	Title      string       `json:"title"`
	Question   string       `json:"question"` // what the cue answers
	Measure    string       `json:"measure"`  // what the engine measures for it
	Base       int          `json:"base"`     // the level below the first cut
	Hysteresis float64      `json:"hysteresis"`
	Levels     []LevelWords `json:"levels"`
	Cuts       []Cut        `json:"cuts"`
	Sources    []string     `json:"sources"`
}

// LevelWords is one level: a name of a word or two, and what it looks like.
type LevelWords struct {
	Level int    `json:"level"`
	Name  string `json:"name"`
	Looks string `json:"looks"`
}

// Cut is where one level ends and the next begins.
type Cut struct {
	At      float64 `json:"at"`
	Because string  `json:"because"` // its derivation
}

// Threshold is a single cut point of a cue that is not ordinal. ID is the field
// of cue.Scales that it sets.
type Threshold struct {
	ID      string   `json:"id"`
	At      float64  `json:"at"`
	Unit    string   `json:"unit"`
	Because string   `json:"because"`
	Sources []string `json:"sources"`
}

// HueWords is one hue, what it usually says and what else gives it.
type HueWords struct {
	Colour engine.Colour `json:"colour"`
	Name   string        `json:"name"`
	Says   string        `json:"says"`
	Also   string        `json:"also"`
}
