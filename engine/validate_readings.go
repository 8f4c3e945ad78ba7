package engine

// Bounds of readings, chosen by us.
const (
	maxLooks      = 500
	maxLookDays   = 2 * 86400.0 // s
	maxSeen       = 64          // openings in one look
	maxChanges    = 64
	maxStoreys    = 200
	maxSeenWindMS = 60
)

// Validate checks a readings file. The error is a *Problem.
func (r Readings) Validate() error {
	c := &checker{}
	c.version(r.V, "readings")
	c.count("looks", len(r.Looks), 1, maxLooks)
	if r.Building != nil {
		r.Building.validate(c)
	}
	if r.Plan != nil {
		r.Plan.validate(c)
	}
	before := 0.0
	for i, look := range r.Looks {
		where := entry("looks", i, "")
		look.validate(c, where)
		if look.TS != nil {
			if *look.TS < before {
				c.fail(where+".t_s", "is "+number(*look.TS)+", before the look above it", "put the looks in order of time")
			}
			before = *look.TS
		}
	}
	return c.err
}

func (b Building) validate(c *checker) {
	c.text("building.kind", b.Kind)
	c.text("building.construction", b.Construction)
	maybeWhole(c, "building.storeys", b.Storeys, 1, maxStoreys)
}

func (p Plan) validate(c *checker) {
	c.count("plan.compartments", len(p.Compartments), 1, MaxCompartments)
	c.count("plan.openings", len(p.Openings), 0, MaxOpenings)
	names := map[string]bool{}
	rooms := validateCompartments(c, "plan.compartments", p.Compartments, names)
	validateOpenings(c, "plan.openings", p.Openings, rooms, names)
}

func (l Look) validate(c *checker, where string) {
	c.maybeWithin(where+".t_s", l.TS, 0, maxLookDays, "s")
	if l.Wind != nil {
		c.maybeWithin(where+".wind.m_s", l.Wind.MS, 0, maxSeenWindMS, "m/s")
		word(c, where+".wind.from", l.Wind.From, Sides)
	}
	c.count(where+".changes", len(l.Changes), 0, maxChanges)
	for i, change := range l.Changes {
		at := entry(where+".changes", i, "")
		c.id(at+".opening", change.Opening, map[string]bool{})
		if !Known(change.State, OpeningStates) {
			c.fail(at+".state", "is "+quote(string(change.State)), "use "+OneOf(OpeningStates))
		}
	}
	c.count(where+".openings", len(l.Openings), 0, maxSeen)
	seen := map[string]bool{}
	for i, reading := range l.Openings {
		reading.validate(c, entry(where+".openings", i, ""), seen)
	}
}

func (r Reading) validate(c *checker, where string, seen map[string]bool) {
	c.id(where+".id", r.ID, seen)
	word(c, where+".side", r.Side, Sides)
	word(c, where+".kind", r.Kind, SeenKinds)
	word(c, where+".state", r.State, OpeningStates)
	word(c, where+".flow", r.Flow, Flows)
	word(c, where+".colour", r.Colour, Colours)
	word(c, where+".flame", r.Flame, FlamesSeen)
	word(c, where+".window", r.Window, GlassesSeen)
	maybeWhole(c, where+".floor", r.Floor, -10, maxStoreys)
	if r.WidthM != nil {
		c.above(where+".width_m", *r.WidthM, maxRoomM, "m")
	}
	if r.HeightM != nil {
		c.above(where+".height_m", *r.HeightM, maxRoomHighM, "m")
	}
	for _, cue := range OrdinalCues {
		maybeWhole(c, where+"."+string(cue), r.Level(cue), 0, TopLevel)
	}
	c.maybeWithin(where+".neutral_plane", r.NeutralPlane, 0, 1, "(a share of the opening's height)")
}

func maybeWhole(c *checker, where string, n *int, low, high int) {
	if n != nil {
		c.within(where, float64(*n), float64(low), float64(high), "")
	}
}
