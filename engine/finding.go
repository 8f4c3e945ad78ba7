package engine

// Finding is the reading that the engine gives back: what the ratings are
// consistent with, why, and which look would change it most. It states
// conditions and never gives an order.
type Finding struct {
	V        int                       `json:"v"`
	Engine   string                    `json:"engine"`
	Stage    map[Stage]float64         `json:"stage"`  // sums to 1
	Regime   map[Regime]float64        `json:"regime"` // sums to 1
	Set      []Stage                   `json:"set"`    // the stages that cannot be told apart from here
	Openings map[string]OpeningFinding `json:"openings"`
	Path     []string                  `json:"path"` // ids from inlet to outlet, compartments between where the plan is known
	PathNote string                    `json:"path_note,omitempty"`
	Hazards  []HazardFinding           `json:"hazards"`
	Because  []Evidence                `json:"because"`
	Against  []Evidence                `json:"against"`
	NextLook *NextLook                 `json:"next_look"`
	Trend    string                    `json:"trend,omitempty"` // better, steady or worse between the last two looks
	Cautions []string                  `json:"cautions"`
}

// Role is what an opening does in the flow path.
type Role string

// The roles.
const (
	RoleIn      Role = "in"
	RoleOut     Role = "out"
	RoleBoth    Role = "both"
	RoleNone    Role = "none"
	RoleUnknown Role = "unknown"
)

// OpeningFinding is what is inferred of one opening. Nearness is 0 to 1: how
// strongly the signs put the seat of the fire behind this opening.
type OpeningFinding struct {
	Role         Role     `json:"role"`
	Nearness     float64  `json:"nearness"`
	NeutralPlane *float64 `json:"neutral_plane"`
	Estimated    bool     `json:"estimated"` // NeutralPlane was worked out, not seen
}

// HazardFinding is one rapid event and the conditions seen for it. Flagged at a
// threshold fixed beforehand. A hazard is never called low, safe or clear.
type HazardFinding struct {
	Event       Hazard   `json:"event"`
	Probability float64  `json:"probability"`
	Flagged     bool     `json:"flagged"`
	Conditions  []string `json:"conditions"`
}

// Evidence is one rule that spoke: for the top answer or against it.
type Evidence struct {
	Rule   string  `json:"rule"`
	Text   string  `json:"text"`
	Weight float64 `json:"weight"` // log-odds, to three places
	Source string  `json:"source"`
	For    string  `json:"for,omitempty"` // what the weight is about: a stage, a regime, a hazard or NearestOpening; a negative weight speaks against it

	At   []string `json:"at,omitempty"`   // the openings at which it holds; none for a rule of the whole building
	Cues []Cue    `json:"cues,omitempty"` // what it rests on

	Open []string `json:"open,omitempty"` // of a rule that counts what stands open, the openings seen open
	Shut []string `json:"shut,omitempty"` // and those seen shut
}

// NearestOpening is what Evidence.For says of a rule that speaks on which opening
// is nearest the seat.
const NearestOpening = "nearest"

// NextLook is the one observation expected to change the answer most.
type NextLook struct {
	Opening  string  `json:"opening"`
	Cue      Cue     `json:"cue"`
	GainBits float64 `json:"gain_bits"`
}
