package trial

import (
	"encoding/json"
	"fmt"
	"slices"

	"lintel/engine"
	"lintel/engine/shape"
)

// File is testdata/cases/cases.json.
type File struct {
	V      int    `json:"v"`
	What   string `json:"what"`
	Coding string `json:"coding"`
	Cases  []Case `json:"cases"`
}

// Case is one moment of one fire.
type Case struct {
	ID         string             `json:"id"`
	Provenance Provenance         `json:"provenance"`
	Confidence float64            `json:"coder_confidence"`
	SeenFrom   map[string]Vantage `json:"seen_from"` // by opening
	Readings   engine.Readings    `json:"readings"`
	Truth      Truth              `json:"truth"`
}

// Provenance is where a case was published and how much of it was read.
type Provenance struct {
	Report   string   `json:"report"`
	Title    string   `json:"title"`
	Kind     string   `json:"kind"`
	Address  string   `json:"address"`
	Part     string   `json:"part"`
	TextSeen string   `json:"text_seen"`
	Year     *float64 `json:"year,omitempty"`
}

// Vantage is where an opening was seen from.
type Vantage string

// The vantages. Inside is not what a person outside could have rated.
const (
	Outside   Vantage = "outside"
	AtOpening Vantage = "at_opening"
	Inside    Vantage = "inside"
)

// Truth is what was so at the moment, and what came next.
type Truth struct {
	Outcome            Outcome      `json:"outcome"`
	Event              string       `json:"event"`
	Stage              engine.Stage `json:"stage,omitempty"`
	VentilationLimited *bool        `json:"ventilation_limited,omitempty"`
	RapidEvent         *bool        `json:"rapid_event,omitempty"`
}

// Outcome groups the cases. Benign means that no rapid event was reported, not
// that none could have happened.
type Outcome string

// The outcomes.
const (
	Hostile Outcome = "hostile"
	Benign  Outcome = "benign"
	Unclear Outcome = "unclear"
)

// Parse reads the file strictly, every readings file in it included.
func Parse(text []byte) (File, error) {
	var tree any
	if err := json.Unmarshal(text, &tree); err != nil {
		return File{}, fmt.Errorf("cases: %w", err)
	}
	var f File
	if err := shape.Decode(tree, &f); err != nil {
		return File{}, fmt.Errorf("cases: %w", err)
	}
	for i := range f.Cases {
		c := &f.Cases[i]
		if err := c.Readings.Validate(); err != nil {
			return File{}, fmt.Errorf("cases: %s: %w", c.ID, err)
		}
		if !slices.Contains([]Outcome{Hostile, Benign, Unclear}, c.Truth.Outcome) {
			return File{}, fmt.Errorf("cases: %s: the outcome %q is not known: use hostile, benign or unclear", c.ID, c.Truth.Outcome)
		}
	}
	return f, nil
}

// fromOutside keeps what was seen from outside or at an opening.
func (c *Case) fromOutside() engine.Readings {
	r := c.Readings
	r.Looks = slices.Clone(r.Looks)
	for i := range r.Looks {
		r.Looks[i].Openings = slices.DeleteFunc(slices.Clone(r.Looks[i].Openings), func(o engine.Reading) bool {
			return c.SeenFrom[o.ID] != Outside && c.SeenFrom[o.ID] != AtOpening
		})
	}
	return r
}

// hasCue reports whether anything that can be rated was coded: a cue of smoke,
// not only that an opening stood open or which way it flowed.
func hasCue(r engine.Readings) bool {
	for _, look := range r.Looks {
		for i := range look.Openings {
			o := &look.Openings[i]
			for _, cue := range engine.OrdinalCues {
				if o.Level(cue) != nil {
					return true
				}
			}
			if o.Colour != "" || o.Churning != nil || o.Pulsing != nil || o.NeutralPlane != nil || o.Flame != "" || o.Window != "" {
				return true
			}
		}
	}
	return false
}
