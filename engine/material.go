package engine

// Materials is the data that the fire needs and content holds: the solid fuels
// and the linings, each with its source.
type Materials struct {
	Fuels   []FuelKind
	Linings []Lining
}

// FuelKind is a solid fuel as burned in a scenario. Yields are kg per kg of
// fuel gas burned with plenty of air.
type FuelKind struct {
	ID               string  `json:"id"`
	Name             string  `json:"name"`
	HeatMJKg         float64 `json:"heat_mj_kg"`         // effective heat of combustion of its fuel gas
	GasificationMJKg float64 `json:"gasification_mj_kg"` // heat to gasify 1 kg
	RadiantFraction  float64 `json:"radiant_fraction"`
	SootYield        float64 `json:"soot_yield"`
	TarYield         float64 `json:"tar_yield"` // pale aerosol when it pyrolyses without flame
	COYield          float64 `json:"co_yield"`
	Moisture         float64 `json:"moisture"` // kg water per kg dry
	CharFraction     float64 `json:"char_fraction"`
	BulkDensityKgM3  float64 `json:"bulk_density_kg_m3"`
	AreaM2PerKg      float64 `json:"area_m2_per_kg"`    // exposed surface
	BurnFluxKgM2S    float64 `json:"burn_flux_kg_m2_s"` // free-burning mass flux
	GrowthS          float64 `json:"growth_s"`          // e-folding time of flame spread over the package
	SimulatedOnly    bool    `json:"simulated_only"`    // never to be burned in a live prop
	Source           string  `json:"source"`
}

// Lining is a wall, floor and ceiling material.
type Lining struct {
	ID               string  `json:"id"`
	Name             string  `json:"name"`
	ConductivityWMK  float64 `json:"conductivity_w_m_k"`
	DensityKgM3      float64 `json:"density_kg_m3"`
	HeatCapacityJKgK float64 `json:"heat_capacity_j_kg_k"`
	ThicknessM       float64 `json:"thickness_m"`    // the usual one, where a scenario gives none
	Fuel             string  `json:"fuel,omitempty"` // the fuel kind it pyrolyses to, if it burns
	Source           string  `json:"source"`
}
