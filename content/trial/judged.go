package trial

// Judged is the reader as it is shipped, held against simulated fires that nothing
// was fitted to; `fit -judge` prints it as JSON. Half of the fires fit the rivals,
// which are free to learn; the other half judge all alike.
type Judged struct {
	Fires   int    `json:"fires"`
	Moments int    `json:"moments"` // that judge
	Exact   Shares `json:"exact"`   // ratings without a fault
	Noisy   Shares `json:"noisy"`   // ratings as people give them
}

// Shares are of moments, 0 to 1, but for Size, which counts stages, and Roles and
// Plane, which are shares of openings.
type Shares struct {
	Top            float64            `json:"top"`
	SetHolds       float64            `json:"set_holds"`
	Size           float64            `json:"set_size"`
	Calibration    float64            `json:"calibration"`
	ConfidentWrong float64            `json:"confident_wrong"`
	Roles          float64            `json:"roles"`
	Plane          float64            `json:"plane"`
	Controls       map[string]float64 `json:"controls"` // top stage right; roles and plane of who says the same of each opening
}
