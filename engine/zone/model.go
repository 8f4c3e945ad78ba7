package zone

import "lintel/engine"

// OutsideRoom is the index by which a vent leads to open air.
const OutsideRoom = -1

// Room is one compartment: its box, its gas, its walls and what went on in it
// during the last step.
type Room struct {
	Width, Depth, Height, Floor float64
	Area                        float64 // of the floor
	Volume                      float64
	Gas                         [2]Layer
	Pressure                    float64 // Pa over the outside, at the floor
	Faces                       [faceCount]Face
	inside                      float64 // m² of all of them
	Flame                       float64 // 0 to 1: how far flame fills the gas that could burn
	Spray                       float64 // kg of water in the air
	Wet                         float64 // kg of water on the walls
	wood                        *engine.FuelKind
	Out                         RoomOutput
	now                         view
	next                        measured // of the gas as the last step left it
	rate                        [2]Layer
	inflow                      float64    // m³/s that came in low, of late
	draught                     float64    // the same as it blows past a fire, see inhale
	fresh                       float64    // oxygen mole fraction of it
	swell                       float64    // K kg/s: what it would grow by without vents, see swells
	slip                        float64    // K kg/s: what it grew by unforeseen, see slips
	over                        float64    // share of its volume by which it is too full
	film                        [2]float64 // W/(m² K), convection of each layer along the faces
	grey                        float64    // emissivity of the upper layer
	lastingS                    float64
	lasting                     [2]float64 // kelvin, highest of each layer over the last seconds
	jetReady                    float64    // how well jets into the room would burn
	jetSeed                     float64    // what would light them
}

// RoomOutput is what a room did in the last step.
type RoomOutput struct {
	BurnW     float64 // all burning inside the room
	LayerW    float64 // of it, in the layer and in jets
	FloorFlux float64 // W/m² onto a cold floor
	Relief    float64 // m³/s let out because the pressure met its cap
}

// measured is what the amount and the enthalpy of the layers come to.
type measured struct {
	temp     [2]float64
	volume   [2]float64
	capacity [2]float64 // J/(kg K)
}

// view is what a step needs to know of a room again and again.
type view struct {
	measured
	column Column
	barren bool    // holds too little fuel gas to burn anywhere
	share  float64 // of the room's height that is lower layer
	// plug is the share of the upper layer in what a ceiling opening draws: a thin
	// layer is drawn through and the gas under it comes along. Whole above a
	// twentieth of the room's height; chosen by us. sink is the same of the lower
	// layer and an opening in the floor.
	plug, sink float64
	oxygen     [2]float64
	left       [2]float64 // kg/s that may still be drawn in this step
	drawn      [2]float64 // kg/s drawn in this step
	vented     [2]float64 // kg/s of it that left the building
	crossed    [2]float64 // kg/s that went over to the other layer in this step
	oxygenLeft [2]float64 // kg/s that may still be burned in this step
	heatLeft   [2]float64 // W of fuel that may still be burned
	inflow     float64    // m³/s that came in low in this step
	squares    float64    // and the sum of the squares of its streams
	freshFlow  float64    // m³/s of oxygen that came in low
	pilot      float64    // strongest flame of the room's fires
	alight     float64    // the same of the step before
	flameW     float64    // W radiated by plumes
}

// Vent is an opening.
type Vent struct {
	A, B       int // rooms; B may be OutsideRoom
	Horizontal bool
	AboveIsB   bool // horizontal: B is the upper of the two
	Slot       Slot // whole opening
	Hole       Hole // whole opening
	Side       engine.Side
	Crack      bool    // leakage: feels no wind
	Open       float64 // share open now
	target     float64
	speed      float64 // share a second
	Flow       VentFlow
	Exchange   HoleFlow
	Outside    float64       // 0 to 1: flame on the outflow outside
	OutsideW   float64       // W burning outside
	JetW       float64       // W burning in the jets on both sides
	Mixed      [2]Mixing     // what the streams into A and into B drew in, over the last moments
	stream     [2][2]float64 // kg/s by layer out of A and out of B, over the last moments
	passing    [2][2]float64 // the same in this step
	windPa     float64
	shut       float64 // share that still leaks when shut
	seeps      bool    // cracks, whose free width grows with the pressure
	seep       float64 // share of the width of cracks that gas can pass now; above 1 beyond seepPa
	fails      failure
	Failed     bool // heat made it give way
}

// Mixing is what a stream drew in as it entered a room in the last step.
type Mixing struct {
	Amount float64 // kg/s
	From   int     // layer it came from
	Up     float64 // share of the stream that joined the upper layer
}

// Fire is a burner or a solid package.
type Fire struct {
	Room     int
	Kind     engine.FuelKind
	Burner   bool
	Power    [][2]float64 // burner: s, W
	Base     float64      // m above the floor
	Diameter float64
	Faces    float64
	Mass0    float64 // kg dry, at the start
	Mass     float64
	skin     float64 // m² of the package as it stands, which is all that the room's radiation sees: five faces of a cube of its bulk
	Water    float64 // kg that fell on it
	Ignite   float64 // s; never when NaN
	lit      bool
	Spread   float64 // share of the surface burning
	Flame    float64 // 0 to 1
	Ember    float64 // 0 to 1
	Hot      float64 // kg/(s m²) given off under the flame's heat
	Warm     float64 // kg/(s m²) of outer surface given off under the room's
	Gas      float64 // kg/s given off in the last step
	BurnW    float64 // W burned in its plume in the last step
	power    float64 // the same over the last moments
	Lives    float64 // 0 to 1: whether flame lives in the gas it breathes
	Starved  float64 // share of its gas that found no oxygen in the plume
	Unmade   float64 // kg/s of gas more that its flame would make in clean air
}

// Model is a building on fire. Make one with New and step it with Step; Clone
// copies it. It is plain data: no pointer is shared but to constants.
type Model struct {
	Rooms    []Room
	Vents    []Vent
	Fires    []Fire
	Ambient  float64 // kelvin
	WindMS   float64
	WindOn   engine.Side // the side the wind blows onto
	Time     float64
	Steps    int
	turns    int // parts of steps taken
	parts    int // in which the next step is taken, see divide
	calm     int // steps since more of them were needed
	Books    Books
	HRR      float64 // W, inside and outside
	solver   solver
	air      Layer
	airTemp  float64 // of it by its enthalpy, kelvin
	density  float64 // of the air outside
	breathed float64 // kg/s of it that came in, in this step
}

// Clone returns an independent copy.
func (m *Model) Clone() *Model {
	c := *m
	c.Rooms = append([]Room(nil), m.Rooms...)
	c.Vents = append([]Vent(nil), m.Vents...)
	c.Fires = append(make([]Fire, 0, cap(m.Fires)), m.Fires...)
	return &c
}
