package engine

// Slack in geometry, chosen by us: a millimetre for sums of rounded lengths,
// and for a floor between stacked rooms the thickest that a house has.
const (
	slackM     = 0.001
	maxFloorTM = 0.7
)

// validateOpenings checks that every opening joins what exists and fits where
// it is put. A nil share of opening is left to the caller: a scenario needs
// one, a plan in a readings file does not.
func validateOpenings(c *checker, list string, openings []Opening, rooms map[string]Compartment, names map[string]bool) {
	for i, o := range openings {
		at := func(field string) string { return entry(list, i, field) }
		c.id(at("id"), o.ID, names)
		if !Known(o.Kind, OpeningKinds) {
			c.fail(at("kind"), "is "+quote(string(o.Kind)), "use "+OneOf(OpeningKinds))
		}
		word(c, at("side"), o.Side, Sides)
		c.maybeWithin(at("open"), o.Open, 0, 1, "")
		o.Fails.validate(c, at)
		o.validateEnds(c, at, rooms)
		if c.err != nil {
			return
		}
		if o.Kind.Horizontal() {
			o.validateHorizontal(c, at, rooms)
		} else {
			o.validateVertical(c, at, rooms)
		}
	}
}

// Limits of how an opening gives way; chosen by us.
const (
	minGlassC, maxGlassC = 100, 1000
	maxWoodMM            = 100
)

func (f *Failure) validate(c *checker, at func(string) string) {
	if f == nil {
		return
	}
	c.maybeWithin(at("fails.glass_c"), f.GlassC, minGlassC, maxGlassC, "°C")
	c.maybeWithin(at("fails.wood_mm"), f.WoodMM, 1, maxWoodMM, "mm")
}

func (o Opening) validateEnds(c *checker, at func(string) string, rooms map[string]Compartment) {
	if _, ok := rooms[o.From]; !ok {
		c.fail(at("from"), "is "+quote(o.From)+", which is no compartment", "name a compartment, with "+quote(Outside)+" only in to")
	}
	if _, ok := rooms[o.To]; !ok && o.To != Outside {
		c.fail(at("to"), "is "+quote(o.To)+", which leads nowhere", "name a compartment or "+quote(Outside))
	}
	if o.From == o.To {
		c.fail(at("to"), "is the same as from", "join two compartments, or one and "+quote(Outside))
	}
}

func (o Opening) validateVertical(c *checker, at func(string) string, rooms map[string]Compartment) {
	c.absent(at("area_m2"), o.AreaM2 != 0, "a "+string(o.Kind)+" has width_m and height_m")
	c.absent(at("shape"), o.Shape != "", "a "+string(o.Kind)+" has width_m and height_m")
	from := rooms[o.From]
	c.above(at("width_m"), o.WidthM, maxRoomM, "m")
	c.above(at("height_m"), o.HeightM, maxRoomHighM, "m")
	c.within(at("sill_m"), o.SillM, 0, maxRoomHighM, "m")
	c.maybeWithin(at("at_m"), o.AtM, 0, maxRoomM, "m")
	o.fitsWall(c, at, from, o.SillM)
	if to, ok := rooms[o.To]; ok {
		o.fitsWall(c, at, to, from.FloorM+o.SillM-to.FloorM)
	}
	if o.AtM != nil && *o.AtM+o.WidthM > from.wallM(o.Side)+slackM {
		c.fail(at("at_m"), "puts its far edge "+number(*o.AtM+o.WidthM)+" m along a wall of "+number(from.wallM(o.Side))+" m", "begin it nearer the corner")
	}
}

// fitsWall checks the opening against the wall of one room that it joins; sill
// is above that room's floor.
func (o Opening) fitsWall(c *checker, at func(string) string, room Compartment, sill float64) {
	if sill < -slackM {
		c.fail(at("sill_m"), "is "+number(-sill)+" m below the floor of "+quote(room.ID), "raise it")
	}
	if top := sill + o.HeightM; top > room.HeightM+slackM {
		c.fail(at("height_m"), "reaches "+number(top)+" m in "+quote(room.ID)+", which is "+number(room.HeightM)+" m high", "make it or its sill lower")
	}
	if wall := room.wallM(o.Side); o.WidthM > wall+slackM {
		c.fail(at("width_m"), "is "+number(o.WidthM)+" m in a wall of "+number(wall)+" m of "+quote(room.ID), "make it narrower")
	}
}

// wallM is the length of a room's wall on a side, or of its longest wall where
// no side is named.
func (room Compartment) wallM(side Side) float64 {
	switch side {
	case Alpha, Charlie:
		return room.WidthM
	case Bravo, Delta:
		return room.DepthM
	}
	return max(room.WidthM, room.DepthM)
}

func (o Opening) validateHorizontal(c *checker, at func(string) string, rooms map[string]Compartment) {
	because := "a " + string(o.Kind) + " has area_m2 and shape"
	c.absent(at("width_m"), o.WidthM != 0, because)
	c.absent(at("height_m"), o.HeightM != 0, because)
	c.absent(at("sill_m"), o.SillM != 0, because)
	if o.Shape != "square" && o.Shape != "round" {
		c.fail(at("shape"), "is "+quote(o.Shape), "use square or round")
	}
	from := rooms[o.From]
	c.above(at("area_m2"), o.AreaM2, from.WidthM*from.DepthM, "m2 (the floor of "+quote(from.ID)+")")
	to, inside := rooms[o.To]
	switch {
	case inside:
		c.above(at("area_m2"), o.AreaM2, to.WidthM*to.DepthM, "m2 (the floor of "+quote(to.ID)+")")
		if !stacked(from, to) && !stacked(to, from) {
			c.fail(at("to"), "joins "+quote(from.ID)+" and "+quote(to.ID)+", of which neither stands on the other", "set floor_m so that one begins where the other ends")
		}
	case o.Kind == FloorHole:
		c.fail(at("to"), "is "+quote(Outside)+" for a floor_hole", "name the compartment under it")
	}
}

// stacked reports whether upper begins where lower ends, give or take a floor.
func stacked(lower, upper Compartment) bool {
	gap := upper.FloorM - (lower.FloorM + lower.HeightM)
	return gap >= -slackM && gap <= maxFloorTM
}
