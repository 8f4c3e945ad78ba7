package infer

import "lintel/engine"

// Rule is one piece of trade knowledge, as content holds it.
type Rule struct {
	ID          string          `json:"id"`
	Text        string          `json:"text"`             // plain words that a fire instructor can check
	At          Scope           `json:"at"`               // judged at each opening, or once for the building
	When        []string        `json:"when"`             // all must be seen to hold
	Unless      []string        `json:"unless,omitempty"` // none may be seen to hold
	Confidence  Confidence      `json:"confidence"`       // the trade's
	Supports    []engine.Stage  `json:"supports,omitempty"`
	Opposes     []engine.Stage  `json:"opposes,omitempty"`
	Regime      engine.Regime   `json:"regime,omitempty"`
	Hazards     []engine.Hazard `json:"hazards,omitempty"`
	Nearness    float64         `json:"nearness,omitempty"`  // log-odds that the seat lies behind this opening
	Alike       []engine.Stage  `json:"alike,omitempty"`     // stages that sources do not tell apart by this sign
	Condition   string          `json:"condition,omitempty"` // how a hazard's list of conditions words it
	Caution     string          `json:"caution,omitempty"`   // what to keep in mind with the whole reading
	LookAlike   string          `json:"look_alike,omitempty"`
	NextLook    string          `json:"next_look,omitempty"`
	CounterSign string          `json:"counter_sign"` // what would show that the rule is wrong here
	Sources     []string        `json:"sources"`
}

// Scope is where a rule is judged.
type Scope string

// The scopes.
const (
	AtOpening  Scope = "opening"
	AtBuilding Scope = "building"
)

// Confidence is how far instructors and physics are thought to agree.
type Confidence string

// The confidences.
const (
	High   Confidence = "high"
	Middle Confidence = "middle"
	Low    Confidence = "low"
)

// logOdds is the weight of a rule that has not been measured. Chosen by us: odds
// of about 4.5, 2.7 and 1.6 to 1.
func (c Confidence) logOdds() float64 {
	switch c {
	case High:
		return 1.5
	case Middle:
		return 1.0
	}
	return 0.5
}

// Weights are the measured log-odds of one rule, in the order of TrueStages and
// engine.Hazards. Regime is positive where it speaks for ventilation-limited.
type Weights struct {
	Rule   string
	Stage  [stageCount]float64
	Regime float64
	Hazard [hazardCount]float64
}

// Priors are the log-odds before any sign is seen, and the probabilities above
// which a hazard is flagged, all fixed on simulated fires.
type Priors struct {
	Stage   [stageCount]float64
	Regime  float64
	Hazard  [hazardCount]float64
	Flag    [hazardCount]float64
	Cover   float64 // probability that the returned set of stages must hold
	Answers []Answers
}

// Source is a public text that rules and lessons lean on.
type Source struct {
	ID        string `json:"id"`
	Title     string `json:"title"`
	Publisher string `json:"publisher"`
	Year      string `json:"year,omitempty"`
	Address   string `json:"address,omitempty"`
	Seen      string `json:"seen"` // how much of it was read, or that it is from memory
}

// TrueStages are the stages a fire can truly be in.
var TrueStages = engine.Stages[:stageCount]

const (
	stageCount  = 7
	hazardCount = 4
)
