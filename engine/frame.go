package engine

// Frame is one instant of a running fire, for drawing. Every number is a
// float64 so that a frame crosses to the phone's drawing code as one typed
// array, in field order: the header, then each compartment, then each opening
// in the order of the scenario. NaN means "there is none". The offsets are
// generated into the front end from these structs, never typed by hand.
type Frame struct {
	Header       FrameHeader
	Compartments []CompartmentFrame
	Openings     []OpeningFrame
}

// FrameHeader is the whole building. Stage indexes Stages, Regime is 0 for
// fuel-limited and 1 for ventilation-limited.
type FrameHeader struct {
	TS     float64
	HRRKW  float64
	Stage  float64
	Regime float64
	WindMS float64
	Events float64 // how many events so far
}

// CompartmentFrame is one compartment. Soot, Aerosol are g/m3 in the upper
// layer; O2 and CO mole fractions; FuelGas a mass fraction.
type CompartmentFrame struct {
	UpperC       float64
	LowerC       float64
	InterfaceM   float64 // above the floor
	O2Upper      float64
	O2Lower      float64
	FuelGasUpper float64
	COUpper      float64
	SootUpper    float64
	AerosolUpper float64
	HRRKW        float64
	PressurePa   float64
	FloorFluxKW  float64 // kW/m2 at the floor
}

// OpeningFrame is one opening: what the physics says, what it looks like, and
// the exact ratings. Flow is 0 none, 1 in, 2 out, 3 both; Colour indexes
// Colours. A rating is NaN where nothing can be rated.
type OpeningFrame struct {
	Open          float64
	InKgS         float64
	OutKgS        float64
	NeutralM      float64 // above the floor of From
	TopVelocityMS float64 // outward positive
	OutVelocityMS float64 // mean over the outflow band
	InVelocityMS  float64
	OutTempC      float64
	ExtinctionM   float64 // 1/m
	OpticalDepth  float64 // through the outflow
	Lightness     float64 // 0 black to 1 white
	Tint          float64 // 0 neutral to 1 brown
	Steam         float64 // 0 to 1, share of the aerosol that is water
	Churning      float64
	Pulsing       float64
	FlameKW       float64 // burning that shows in or outside the opening
	Flow          float64
	NeutralPlane  float64 // fraction of the opening's height
	Volume        float64
	Velocity      float64
	Density       float64
	Darkness      float64
	Colour        float64
}
