package engine

// Outside is the name by which an opening leads to open air.
const Outside = "outside"

// Limits of one scenario. They are chosen by us: the largest building that a
// phone still simulates in real time.
const (
	MaxCompartments = 12
	MaxOpenings     = 32
	MaxFuels        = 24
	MaxMoves        = 500
	MaxEndS         = 4 * 3600
)

// Scenario is a building, its fuels and what is done to it: version 1 of the
// scenario file. SI units and degrees Celsius.
type Scenario struct {
	V            int           `json:"v"`
	Name         string        `json:"name,omitempty"`
	Ambient      Ambient       `json:"ambient"`
	Compartments []Compartment `json:"compartments"`
	Openings     []Opening     `json:"openings"`
	Fuels        []Fuel        `json:"fuels"`
	Moves        []Move        `json:"moves,omitempty"`
	EndS         float64       `json:"end_s"`
}

// Ambient is the air outside.
type Ambient struct {
	TempC    float64 `json:"t_c"`
	WindMS   float64 `json:"wind_m_s,omitempty"`
	WindFrom Side    `json:"wind_from,omitempty"` // the side the wind blows onto
}

// Compartment is one box-shaped room. FloorM is above the datum. XM and YM
// place its Alpha/Bravo corner on the plan (x to the right along Alpha, y away
// from Alpha); the physics ignores them.
type Compartment struct {
	ID      string   `json:"id"`
	WidthM  float64  `json:"width_m"`
	DepthM  float64  `json:"depth_m"`
	HeightM float64  `json:"height_m"`
	FloorM  float64  `json:"floor_m"`
	Lining  string   `json:"lining"`
	LiningM *float64 `json:"lining_m,omitempty"` // thickness
	LeakM2  *float64 `json:"leak_m2,omitempty"`
	Initial *Initial `json:"initial,omitempty"`
	XM      *float64 `json:"x_m,omitempty"`
	YM      *float64 `json:"y_m,omitempty"`
}

// Initial is the gas a compartment starts with. O2 is a mole fraction and
// FuelGas a mass fraction, both of the upper layer; InterfaceM is above the floor.
type Initial struct {
	UpperC     *float64 `json:"upper_c,omitempty"`
	LowerC     *float64 `json:"lower_c,omitempty"`
	InterfaceM *float64 `json:"interface_m,omitempty"`
	O2         *float64 `json:"o2,omitempty"`
	FuelGas    *float64 `json:"fuel_gas,omitempty"`
}

// OpeningKind says what an opening is, and with it whether it is vertical.
type OpeningKind string

// The kinds of opening in a scenario.
const (
	Door         OpeningKind = "door"
	Window       OpeningKind = "window"
	Port         OpeningKind = "port"
	FloorHole    OpeningKind = "floor_hole"
	CeilingHatch OpeningKind = "ceiling_hatch"
	RoofHatch    OpeningKind = "roof_hatch"
	Leak         OpeningKind = "leak"
)

// OpeningKinds lists every kind.
var OpeningKinds = []OpeningKind{Door, Window, Port, FloorHole, CeilingHatch, RoofHatch, Leak}

// Horizontal reports whether the opening lies in a floor, ceiling or roof.
func (k OpeningKind) Horizontal() bool {
	return k == FloorHole || k == CeilingHatch || k == RoofHatch
}

// Opening joins two compartments, or one and the outside. SillM is above the
// floor of From. Open is the share of width (side-hung, vertical) or of area
// (horizontal). A vertical opening gives sill, width and height; a horizontal
// one gives an area and a shape (square or round) and lies in the floor of From
// when To is below, else in its ceiling. AtM is how far along its side the
// opening begins, for drawing only.
type Opening struct {
	ID      string      `json:"id"`
	From    string      `json:"from"`
	To      string      `json:"to"`
	Side    Side        `json:"side,omitempty"`
	Kind    OpeningKind `json:"kind"`
	SillM   float64     `json:"sill_m,omitempty"`
	WidthM  float64     `json:"width_m,omitempty"`
	HeightM float64     `json:"height_m,omitempty"`
	AreaM2  float64     `json:"area_m2,omitempty"`
	Shape   string      `json:"shape,omitempty"`
	Open    *float64    `json:"open"`
	AtM     *float64    `json:"at_m,omitempty"`
	Fails   *Failure    `json:"fails,omitempty"`
}

// Failure is how heat makes an opening give way; without one it holds. Glass falls
// out where the gas against it stays at GlassC; wood of WoodMM burns through. What
// has given way stays open.
type Failure struct {
	GlassC *float64 `json:"glass_c,omitempty"`
	WoodMM *float64 `json:"wood_mm,omitempty"`
}

// Place is where on the floor a fuel stands: it sets how much of its plume is
// free to entrain air.
type Place string

// The places.
const (
	Centre Place = "centre"
	Wall   Place = "wall"
	Corner Place = "corner"
)

// Places lists every place.
var Places = []Place{Centre, Wall, Corner}

// GasBurner is the fuel kind whose heat release is prescribed by HRRKW.
const GasBurner = "gas_burner"

// Fuel is a burner (HRRKW: time s and power kW, straight lines between) or a
// solid package (MassKg of a kind in content/fuels, lit at IgniteS).
type Fuel struct {
	ID        string       `json:"id"`
	In        string       `json:"in"`
	Kind      string       `json:"kind"`
	HRRKW     [][2]float64 `json:"hrr_kw,omitempty"`
	Place     Place        `json:"place,omitempty"`
	IgniteS   *float64     `json:"ignite_s,omitempty"`
	BaseM     *float64     `json:"base_m,omitempty"`     // above the floor
	DiameterM *float64     `json:"diameter_m,omitempty"` // of the burning base
	MassKg    *float64     `json:"mass_kg,omitempty"`
}

// Move is something done to the building at TS: an opening set, fuel added (and
// lit), water put into a compartment, or the wind changed. Exactly one of them.
type Move struct {
	TS       float64  `json:"t_s"`
	Opening  string   `json:"opening,omitempty"`
	Open     *float64 `json:"open,omitempty"`
	OverS    float64  `json:"over_s,omitempty"`
	Fuel     string   `json:"fuel,omitempty"` // a kind in content/fuels
	MassKg   *float64 `json:"mass_kg,omitempty"`
	WaterL   *float64 `json:"water_l,omitempty"`
	In       string   `json:"in,omitempty"`
	WindMS   *float64 `json:"wind_m_s,omitempty"`
	WindFrom Side     `json:"wind_from,omitempty"`
}
