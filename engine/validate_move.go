package engine

// Bounds of moves, chosen by us.
const maxWaterL = 5000

func validateMoves(c *checker, moves []Move, openings []Opening, rooms map[string]Compartment) {
	for i, m := range moves {
		at := func(field string) string { return entry("moves", i, field) }
		c.within(at("t_s"), m.TS, 0, MaxEndS, "s")
		m.validate(c, at, openings, rooms)
	}
}

// ValidateMove checks one move made by hand while a scenario runs; its time is
// ignored.
func (sc Scenario) ValidateMove(m Move) error {
	c := &checker{}
	rooms := make(map[string]Compartment, len(sc.Compartments))
	for _, room := range sc.Compartments {
		rooms[room.ID] = room
	}
	m.validate(c, func(field string) string { return field }, sc.Openings, rooms)
	return c.err
}

func (m Move) validate(c *checker, at func(string) string, openings []Opening, rooms map[string]Compartment) {
	sets := m.Opening != "" || m.Open != nil || m.OverS != 0
	fuels := m.Fuel != "" || m.MassKg != nil
	wets := m.WaterL != nil
	winds := m.WindMS != nil || m.WindFrom != ""
	if trueOf(sets, fuels, wets, winds) != 1 {
		c.fail(at(""), "does not do exactly one thing", "set an opening, add fuel, put water on, or change the wind")
		return
	}
	switch {
	case sets:
		m.validateOpening(c, at, openings)
	case fuels:
		if m.Fuel == "" {
			c.fail(at("fuel"), "is missing", "name the fuel that mass_kg is of")
		}
		m.validateAmount(c, at("mass_kg"), m.MassKg, maxFuelKg, "kg")
	case wets:
		m.validateAmount(c, at("water_l"), m.WaterL, maxWaterL, "l")
	case winds:
		c.maybeWithin(at("wind_m_s"), m.WindMS, 0, maxWindMS, "m/s")
		word(c, at("wind_from"), m.WindFrom, Sides)
	}
	m.validatePlace(c, at, fuels || wets, rooms)
}

func (m Move) validateOpening(c *checker, at func(string) string, openings []Opening) {
	known := false
	for _, o := range openings {
		known = known || o.ID == m.Opening
	}
	if !known {
		c.fail(at("opening"), "is "+quote(m.Opening)+", which is no opening", "name an opening of this scenario")
	}
	if m.Open == nil {
		c.fail(at("open"), "is missing", "give a share from 0 (shut) to 1 (open)")
		return
	}
	c.within(at("open"), *m.Open, 0, 1, "")
	c.within(at("over_s"), m.OverS, 0, MaxEndS, "s")
}

func (m Move) validateAmount(c *checker, where string, amount *float64, most float64, unit string) {
	if amount == nil {
		c.fail(where, "is missing", "give an amount above 0 "+unit)
		return
	}
	c.above(where, *amount, most, unit)
}

// validatePlace checks the compartment of a move: fuel and water need one, the
// other moves have none.
func (m Move) validatePlace(c *checker, at func(string) string, needed bool, rooms map[string]Compartment) {
	if !needed {
		c.absent(at("in"), m.In != "", "only fuel and water go into a compartment")
		return
	}
	if _, ok := rooms[m.In]; !ok {
		c.fail(at("in"), "is "+quote(m.In)+", which is no compartment", "name the compartment it goes into")
	}
}

func trueOf(flags ...bool) int {
	n := 0
	for _, flag := range flags {
		if flag {
			n++
		}
	}
	return n
}
