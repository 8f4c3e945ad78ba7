package engine

// The bounds below are chosen by us. They are wide: they catch slips of unit
// and of the decimal point, and they do not say what the fire model is good for.
const (
	minRoomM     = 0.1 // a cell of a table-top box is several times this
	maxRoomM     = 100
	maxRoomHighM = 30
	maxFloorM    = 100
	minAirC      = -60
	maxAirC      = 60
	maxGasC      = 1500
	maxWindMS    = 40
)

// Validate checks a scenario for everything that can be judged without knowing
// the fuels and linings (see ValidateMaterials). The error is a *Problem.
func (sc Scenario) Validate() error {
	c := &checker{}
	c.version(sc.V, "scenario")
	c.text("name", sc.Name)
	sc.Ambient.validate(c)
	c.count("compartments", len(sc.Compartments), 1, MaxCompartments)
	c.count("openings", len(sc.Openings), 0, MaxOpenings)
	c.count("fuels", len(sc.Fuels), 0, MaxFuels)
	c.count("moves", len(sc.Moves), 0, MaxMoves)
	c.above("end_s", sc.EndS, MaxEndS, "s")
	if c.err != nil {
		return c.err
	}
	names := map[string]bool{}
	rooms := validateCompartments(c, "compartments", sc.Compartments, names)
	validateOpenings(c, "openings", sc.Openings, rooms, names)
	for i, o := range sc.Openings {
		if o.Open == nil {
			c.fail(entry("openings", i, "open"), "is missing", "give a share from 0 (shut) to 1 (open)")
		}
	}
	validateWindSides(c, sc)
	validateFuels(c, sc.Fuels, rooms)
	validateMoves(c, sc.Moves, sc.Openings, rooms)
	return c.err
}

func (a Ambient) validate(c *checker) {
	c.within("ambient.t_c", a.TempC, minAirC, maxAirC, "C")
	c.within("ambient.wind_m_s", a.WindMS, 0, maxWindMS, "m/s")
	word(c, "ambient.wind_from", a.WindFrom, Sides)
	if a.WindMS > 0 && a.WindFrom == "" {
		c.fail("ambient.wind_from", "is missing", "name the side that the wind blows onto, "+OneOf(Sides))
	}
}

// validateCompartments checks the rooms and returns them by name.
func validateCompartments(c *checker, list string, rooms []Compartment, names map[string]bool) map[string]Compartment {
	known := make(map[string]Compartment, len(rooms))
	for i, room := range rooms {
		at := func(field string) string { return entry(list, i, field) }
		c.id(at("id"), room.ID, names)
		c.within(at("width_m"), room.WidthM, minRoomM, maxRoomM, "m")
		c.within(at("depth_m"), room.DepthM, minRoomM, maxRoomM, "m")
		c.within(at("height_m"), room.HeightM, minRoomM, maxRoomHighM, "m")
		c.within(at("floor_m"), room.FloorM, -maxFloorM, maxFloorM, "m")
		c.text(at("lining"), room.Lining)
		c.maybeWithin(at("lining_m"), room.LiningM, 0.0005, 2, "m")
		c.maybeWithin(at("leak_m2"), room.LeakM2, 0, room.WidthM*room.DepthM, "m2")
		c.maybeWithin(at("x_m"), room.XM, -10*maxRoomM, 10*maxRoomM, "m")
		c.maybeWithin(at("y_m"), room.YM, -10*maxRoomM, 10*maxRoomM, "m")
		if room.Initial != nil {
			room.Initial.validate(c, at("initial"), room.HeightM)
		}
		known[room.ID] = room
	}
	return known
}

func (in Initial) validate(c *checker, where string, heightM float64) {
	c.maybeWithin(where+".upper_c", in.UpperC, minAirC, maxGasC, "C")
	c.maybeWithin(where+".lower_c", in.LowerC, minAirC, maxGasC, "C")
	c.maybeWithin(where+".interface_m", in.InterfaceM, 0, heightM, "m")
	c.maybeWithin(where+".o2", in.O2, 0, 0.25, "(a mole fraction)")
	c.maybeWithin(where+".fuel_gas", in.FuelGas, 0, 0.9, "(a mass fraction)")
	if in.UpperC != nil && in.LowerC != nil && *in.UpperC < *in.LowerC {
		c.fail(where+".upper_c", "is below lower_c", "put the hotter gas above")
	}
}

// validateWindSides demands a side of every vertical opening to the open air
// once wind blows: without it the wind's pressure there is anyone's guess.
func validateWindSides(c *checker, sc Scenario) {
	windy := sc.Ambient.WindMS > 0
	for _, m := range sc.Moves {
		windy = windy || m.WindMS != nil && *m.WindMS > 0
	}
	if !windy {
		return
	}
	for i, o := range sc.Openings {
		if o.To == Outside && !o.Kind.Horizontal() && o.Side == "" {
			c.fail(entry("openings", i, "side"), "is missing while wind blows", "name its side, "+OneOf(Sides))
		}
	}
}
