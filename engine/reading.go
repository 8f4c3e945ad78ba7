package engine

// Readings is what people saw: version 1 of the readings file. Absent and null
// both mean "not seen".
type Readings struct {
	V        int       `json:"v"`
	Building *Building `json:"building,omitempty"`
	Plan     *Plan     `json:"plan,omitempty"`
	Looks    []Look    `json:"looks"`
}

// Building is what is known of the building from outside; anything may be absent.
type Building struct {
	Kind         string `json:"kind,omitempty"`
	Storeys      *int   `json:"storeys,omitempty"`
	Construction string `json:"construction,omitempty"`
}

// Plan is the inside of the building, as in a scenario, sharing opening ids.
type Plan struct {
	Compartments []Compartment `json:"compartments"`
	Openings     []Opening     `json:"openings"`
}

// Look is everything seen at one time.
type Look struct {
	TS       *float64  `json:"t_s,omitempty"`
	Wind     *Wind     `json:"wind,omitempty"`
	Water    *bool     `json:"water,omitempty"` // water was being put on the fire
	Changes  []Change  `json:"changes,omitempty"`
	Openings []Reading `json:"openings"`
}

// Wind as seen from the ground.
type Wind struct {
	MS   *float64 `json:"m_s,omitempty"`
	From Side     `json:"from,omitempty"`
}

// Change is an opening someone opened or shut just before the look.
type Change struct {
	Opening string       `json:"opening"`
	State   OpeningState `json:"state"`
}

// SeenKind is the kind of an opening as an observer names it.
type SeenKind string

// The kinds an observer may name.
const (
	SeenDoor   SeenKind = "door"
	SeenWindow SeenKind = "window"
	SeenVent   SeenKind = "vent"
	SeenRoof   SeenKind = "roof"
	SeenHatch  SeenKind = "hatch"
	SeenCrack  SeenKind = "crack"
	SeenOther  SeenKind = "other"
)

// SeenKinds lists every kind an observer may name.
var SeenKinds = []SeenKind{SeenDoor, SeenWindow, SeenVent, SeenRoof, SeenHatch, SeenCrack, SeenOther}

// Seen is what an observer calls an opening of this kind.
func (k OpeningKind) Seen() SeenKind {
	switch k {
	case Door:
		return SeenDoor
	case Window:
		return SeenWindow
	case Port:
		return SeenVent
	case RoofHatch:
		return SeenRoof
	case FloorHole, CeilingHatch:
		return SeenHatch
	case Leak:
		return SeenCrack
	}
	return SeenOther
}

// OpeningState is how an opening stands, as seen.
type OpeningState string

// The states.
const (
	StateOpen    OpeningState = "open"
	StatePart    OpeningState = "part"
	StateClosed  OpeningState = "closed"
	StateBroken  OpeningState = "broken"
	StateUnknown OpeningState = "unknown"
)

// OpeningStates lists every state.
var OpeningStates = []OpeningState{StateOpen, StatePart, StateClosed, StateBroken, StateUnknown}

// FlameSeen is how much flame shows at an opening.
type FlameSeen string

// The amounts of flame.
const (
	FlameNone    FlameSeen = "none"
	FlameTongues FlameSeen = "tongues"
	FlameFull    FlameSeen = "full"
)

// FlamesSeen lists every amount of flame.
var FlamesSeen = []FlameSeen{FlameNone, FlameTongues, FlameFull}

// GlassSeen is how a window pane looks.
type GlassSeen string

// The looks of glass.
const (
	GlassClear   GlassSeen = "clear"
	GlassStained GlassSeen = "stained"
	GlassCrazed  GlassSeen = "crazed"
)

// GlassesSeen lists every look of glass.
var GlassesSeen = []GlassSeen{GlassClear, GlassStained, GlassCrazed}

// TopLevel is the highest level of an ordinal cue; the lowest is 0.
const TopLevel = 4

// Reading is the ratings of one opening at one time. Volume, velocity, density
// and darkness are ordinal, 0 to TopLevel (the scale is ours; see
// content/scales). NeutralPlane is a fraction of opening height from the sill.
type Reading struct {
	ID           string       `json:"id"`
	Side         Side         `json:"side,omitempty"`
	Floor        *int         `json:"floor,omitempty"`
	Kind         SeenKind     `json:"kind,omitempty"`
	State        OpeningState `json:"state,omitempty"`
	WidthM       *float64     `json:"width_m,omitempty"`
	HeightM      *float64     `json:"height_m,omitempty"`
	Flow         Flow         `json:"flow,omitempty"`
	Volume       *int         `json:"volume,omitempty"`
	Velocity     *int         `json:"velocity,omitempty"`
	Density      *int         `json:"density,omitempty"`
	Darkness     *int         `json:"darkness,omitempty"`
	Colour       Colour       `json:"colour,omitempty"`
	Churning     *bool        `json:"churning,omitempty"`
	Pulsing      *bool        `json:"pulsing,omitempty"`
	Vanishes     *bool        `json:"vanishes,omitempty"` // clears within a few breaths, as steam does
	Flame        FlameSeen    `json:"flame,omitempty"`
	Window       GlassSeen    `json:"window,omitempty"`
	NeutralPlane *float64     `json:"neutral_plane,omitempty"`
}

// Cue names one thing a reading can hold, for the next look and for scores.
type Cue string

// The cues.
const (
	CueFlow         Cue = "flow"
	CueVolume       Cue = "volume"
	CueVelocity     Cue = "velocity"
	CueDensity      Cue = "density"
	CueDarkness     Cue = "darkness"
	CueColour       Cue = "colour"
	CueChurning     Cue = "churning"
	CuePulsing      Cue = "pulsing"
	CueVanishes     Cue = "vanishes"
	CueFlame        Cue = "flame"
	CueWindow       Cue = "window"
	CueNeutralPlane Cue = "neutral_plane"
)

// OrdinalCues are the cues rated 0 to TopLevel.
var OrdinalCues = []Cue{CueVolume, CueVelocity, CueDensity, CueDarkness}

// Level returns the rating of an ordinal cue, or nil where it was not seen.
func (r *Reading) Level(c Cue) *int {
	switch c {
	case CueVolume:
		return r.Volume
	case CueVelocity:
		return r.Velocity
	case CueDensity:
		return r.Density
	case CueDarkness:
		return r.Darkness
	}
	return nil
}
