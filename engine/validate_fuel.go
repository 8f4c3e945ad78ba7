package engine

// Bounds of fuels, chosen by us: far above anything a house holds.
const (
	maxPowerKW = 50000
	maxFuelKg  = 5000
	maxRamp    = 2000 // points of a burner's power over time
)

func validateFuels(c *checker, fuels []Fuel, rooms map[string]Compartment) {
	names := map[string]bool{}
	for i, f := range fuels {
		at := func(field string) string { return entry("fuels", i, field) }
		c.id(at("id"), f.ID, names)
		room, ok := rooms[f.In]
		if !ok {
			c.fail(at("in"), "is "+quote(f.In)+", which is no compartment", "name the compartment it stands in")
		}
		if f.Kind == "" {
			c.fail(at("kind"), "is missing", "write "+GasBurner+" or a solid fuel")
		}
		word(c, at("place"), f.Place, Places)
		c.maybeWithin(at("ignite_s"), f.IgniteS, 0, MaxEndS, "s")
		c.maybeWithin(at("base_m"), f.BaseM, 0, room.HeightM, "m")
		if f.DiameterM != nil {
			c.above(at("diameter_m"), *f.DiameterM, min(room.WidthM, room.DepthM), "m")
		}
		if f.Kind == GasBurner {
			f.validateBurner(c, at)
		} else {
			f.validateSolid(c, at)
		}
	}
}

func (f Fuel) validateBurner(c *checker, at func(string) string) {
	c.absent(at("mass_kg"), f.MassKg != nil, "a "+GasBurner+" burns by hrr_kw")
	c.count(at("hrr_kw"), len(f.HRRKW), 1, maxRamp)
	before := -1.0
	for k, point := range f.HRRKW {
		where := entry(at("hrr_kw"), k, "")
		c.within(where+"[0]", point[0], 0, MaxEndS, "s")
		c.within(where+"[1]", point[1], 0, maxPowerKW, "kW")
		if point[0] <= before {
			c.fail(where+"[0]", "is "+number(point[0])+", not after the time before it", "put the times in rising order")
		}
		before = point[0]
	}
}

func (f Fuel) validateSolid(c *checker, at func(string) string) {
	c.absent(at("hrr_kw"), len(f.HRRKW) > 0, "only a "+GasBurner+" burns by it")
	if f.MassKg == nil {
		c.fail(at("mass_kg"), "is missing", "give the mass of this "+f.Kind)
		return
	}
	c.above(at("mass_kg"), *f.MassKg, maxFuelKg, "kg")
}

// ValidateMaterials checks that every fuel and lining a scenario names is in
// the library. Call it after Validate.
func (sc Scenario) ValidateMaterials(m Materials) error {
	c := &checker{}
	var fuels, linings []string
	for _, kind := range m.Fuels {
		fuels = append(fuels, kind.ID)
	}
	for _, lining := range m.Linings {
		linings = append(linings, lining.ID)
	}
	for i, room := range sc.Compartments {
		if !Known(room.Lining, linings) {
			c.fail(entry("compartments", i, "lining"), "is "+quote(room.Lining), "use "+OneOf(linings))
		}
	}
	for i, f := range sc.Fuels {
		if f.Kind != GasBurner && !Known(f.Kind, fuels) {
			c.fail(entry("fuels", i, "kind"), "is "+quote(f.Kind), "use "+OneOf(append([]string{GasBurner}, fuels...)))
		}
	}
	for i, move := range sc.Moves {
		if move.Fuel != "" && !Known(move.Fuel, fuels) {
			c.fail(entry("moves", i, "fuel"), "is "+quote(move.Fuel), "use "+OneOf(fuels))
		}
	}
	return c.err
}
