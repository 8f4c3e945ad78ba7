package engine

// Series is a scenario run through: the output of `sim -json`. All slices run
// over TS. In and Out are kg/s toward and away from the compartment named by an
// opening's From; InterfaceM and NeutralM are above that compartment's floor.
type Series struct {
	TS           []float64                    `json:"t_s"`
	HRRKW        []float64                    `json:"hrr_kw"`
	Compartments map[string]CompartmentSeries `json:"compartments"`
	Openings     map[string]OpeningSeries     `json:"openings"`
	Stage        []Stage                      `json:"stage"`
	Events       []Event                      `json:"events"`
}

// CompartmentSeries is one compartment over time. O2Upper is a mole fraction,
// FuelGasUpper a mass fraction; InterfaceM is null where there is no layer.
type CompartmentSeries struct {
	UpperC       []float64  `json:"upper_c"`
	LowerC       []float64  `json:"lower_c"`
	InterfaceM   []*float64 `json:"interface_m"`
	O2Upper      []float64  `json:"o2_upper"`
	O2Lower      []float64  `json:"o2_lower"`
	FuelGasUpper []float64  `json:"fuel_gas_upper"`
	HRRKW        []float64  `json:"hrr_kw"`
	PressurePa   []float64  `json:"pressure_pa"`
}

// OpeningSeries is one opening over time.
type OpeningSeries struct {
	InKgS         []float64  `json:"in_kg_s"`
	OutKgS        []float64  `json:"out_kg_s"`
	NeutralM      []*float64 `json:"neutral_m"`
	TopVelocityMS []float64  `json:"top_velocity_m_s"`
	Cues          []Reading  `json:"cues"`
}

// Event is something sudden that the fire did, with its time, place and cause: in
// words, or as a key of them (see Sentence) while it is the engine's own.
type Event struct {
	TS    float64 `json:"t_s"`
	Kind  string  `json:"kind"`
	Where string  `json:"where"`
	Cause string  `json:"cause"`
}
