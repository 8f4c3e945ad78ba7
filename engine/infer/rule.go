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

// Measure is what simulated fires made of one rule: its fitted weights in
// log-odds, and how often what it speaks for was true when it fired. Base is how
// often it was true whether or not the rule fired, which is the control.
type Measure struct {
	Rule    string                    `json:"rule"`
	Claim   string                    `json:"claim"` // what was counted as a hit
	Fires   int                       `json:"fires"`
	Hits    int                       `json:"hits"`
	Share   float64                   `json:"share"`
	Base    float64                   `json:"base"`
	Stage   map[engine.Stage]float64  `json:"stage,omitempty"`
	Regime  float64                   `json:"regime,omitempty"` // positive speaks for ventilation-limited
	Hazards map[engine.Hazard]float64 `json:"hazards,omitempty"`
}

// Priors are the log-odds before any sign is seen, and the probabilities above
// which a hazard is flagged, all fixed on simulated fires.
type Priors struct {
	Stage   map[engine.Stage]float64  `json:"stage"`
	Regime  float64                   `json:"regime"`
	Hazards map[engine.Hazard]float64 `json:"hazards"`
	Flag    map[engine.Hazard]float64 `json:"flag"`
	Cover   float64                   `json:"cover"` // probability that the returned set of stages must hold
	Answers []Answers                 `json:"answers,omitempty"`
	How     string                    `json:"how"` // how and when they were measured
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

// stages are the stages a fire can truly be in.
var stages = engine.Stages[:len(engine.Stages)-1]
