package infer

import (
	"math"
	"slices"

	"lintel/engine"
)

// scene is the last look with what earlier looks and the plan tell of it.
type scene struct {
	building *engine.Building
	plan     *engine.Plan
	look     *engine.Look
	history  []engine.Look // every look, in order of time
	before   *engine.Look  // nil on the first look
	now      []seen
}

// seen is one opening of the last look, and what of it no further look changes.
type seen struct {
	engine.Reading
	past  before
	class group
	moved bool    // some look saw it moved, or standing shut
	area  float64 // 0 where it is not known
	floor float64 // NaN where it is not known
}

// before is what the same opening showed in the look before, NaN where unseen.
type before struct {
	levels [4]float64 // in the order of engine.OrdinalCues
	plane  float64
}

// newScene joins the looks. What an opening is (its kind, side, floor and size)
// is carried over from any earlier look; what it shows is not.
func newScene(r engine.Readings) *scene {
	s := &scene{building: r.Building, plan: r.Plan, history: r.Looks}
	if len(r.Looks) == 0 {
		s.look = &engine.Look{}
		return s
	}
	s.look = &r.Looks[len(r.Looks)-1]
	if len(r.Looks) > 1 {
		s.before = &r.Looks[len(r.Looks)-2]
	}
	s.now = make([]seen, len(s.look.Openings), len(s.look.Openings)+engine.MaxOpenings)
	for i := range s.look.Openings {
		s.now[i].Reading = s.look.Openings[i]
	}
	s.addUnseen()
	s.carryLooks(r.Looks[:len(r.Looks)-1])
	for i := range s.now {
		s.carryPlan(&s.now[i])
		s.carryChange(&s.now[i])
		s.now[i].settle(s.before)
		s.now[i].moved = s.sawMoved(s.now[i].ID)
	}
	return s
}

// sawMoved reports whether any look says that an opening was moved, or stood shut.
func (s *scene) sawMoved(id string) bool {
	for i := range s.history {
		look := &s.history[i]
		if slices.ContainsFunc(look.Changes, func(c engine.Change) bool { return c.Opening == id }) {
			return true
		}
		if o := find(look, id); o != nil && o.State == engine.StateClosed {
			return true
		}
	}
	return false
}

// carryLooks fills in what earlier looks told of the openings, the latest first.
func (s *scene) carryLooks(earlier []engine.Look) {
	at := make(map[string]int, len(s.now))
	for i := range s.now {
		at[s.now[i].ID] = i
	}
	for j := len(earlier) - 1; j >= 0; j-- {
		for k := range earlier[j].Openings {
			if i, seen := at[earlier[j].Openings[k].ID]; seen {
				s.now[i].carry(&earlier[j].Openings[k])
			}
		}
	}
}

// settle works out what the comparisons ask for over and over.
func (o *seen) settle(before *engine.Look) {
	o.class, o.floor = o.group(), math.NaN()
	if o.Floor != nil {
		o.floor = float64(*o.Floor)
	}
	if o.WidthM != nil && o.HeightM != nil {
		o.area = *o.WidthM * *o.HeightM
	}
	past := &engine.Reading{}
	if before != nil {
		if found := find(before, o.ID); found != nil {
			past = found
		}
	}
	for i, cue := range engine.OrdinalCues {
		o.past.levels[i] = level(past, cue)
	}
	o.past.plane = orNaN(past.NeutralPlane)
}

func find(look *engine.Look, id string) *engine.Reading {
	for i := range look.Openings {
		if look.Openings[i].ID == id {
			return &look.Openings[i]
		}
	}
	return nil
}

// carry fills in what an opening is from an earlier look at it.
func (o *seen) carry(past *engine.Reading) {
	if o.Side == "" {
		o.Side = past.Side
	}
	if o.Kind == "" {
		o.Kind = past.Kind
	}
	if o.Floor == nil {
		o.Floor = past.Floor
	}
	if o.WidthM == nil {
		o.WidthM = past.WidthM
	}
	if o.HeightM == nil {
		o.HeightM = past.HeightM
	}
}

// addUnseen adds the outside openings of the plan that the last look left out:
// they have a role in the flow path, and are worth a look.
func (s *scene) addUnseen() {
	if s.plan == nil {
		return
	}
	for i := range s.plan.Openings {
		p := &s.plan.Openings[i]
		if (p.From == engine.Outside || p.To == engine.Outside) && find(s.look, p.ID) == nil {
			s.now = append(s.now, seen{Reading: engine.Reading{ID: p.ID}})
		}
	}
}

// carryPlan fills in what the plan knows of an opening.
func (s *scene) carryPlan(o *seen) {
	if s.plan == nil {
		return
	}
	for i := range s.plan.Openings {
		p := &s.plan.Openings[i]
		if p.ID != o.ID {
			continue
		}
		o.carry(&engine.Reading{
			Side: p.Side, Kind: p.Kind.Seen(), Floor: s.floorOf(p),
			WidthM: above0(p.WidthM), HeightM: above0(p.HeightM),
		})
		if o.State == "" && p.Open != nil && *p.Open == 0 {
			o.State = engine.StateClosed
		}
		return
	}
}

// floorOf counts storeys from the lowest compartment floor of the plan, as 1.
func (s *scene) floorOf(o *engine.Opening) *int {
	for i := range s.plan.Compartments {
		c := &s.plan.Compartments[i]
		if c.ID != o.From {
			continue
		}
		lower := map[float64]bool{}
		for j := range s.plan.Compartments {
			if height := s.plan.Compartments[j].FloorM; height < c.FloorM {
				lower[height] = true
			}
		}
		return new(len(lower) + 1)
	}
	return nil
}

func above0(x float64) *float64 {
	if x > 0 {
		return &x
	}
	return nil
}

// carryChange takes the state an opening was just put in where none was noted.
func (s *scene) carryChange(o *seen) {
	for i := range s.look.Changes {
		if s.look.Changes[i].Opening == o.ID && (o.State == "" || o.State == engine.StateUnknown) {
			o.State = s.look.Changes[i].State
		}
	}
}

// usualDarkness places each hue on the scale of darkness where only the hue was
// noted (content/scales; the tinted hues where their usual darkness puts them).
var usualDarkness = map[engine.Colour]float64{
	engine.White: 1, engine.LightGrey: 2, engine.Brown: 2, engine.YellowGrey: 2,
	engine.Grey: 3, engine.DarkGrey: 3, engine.Black: 4,
}

// level is an ordinal cue as a number, NaN where it was not seen.
func level(r *engine.Reading, cue engine.Cue) float64 {
	if n := r.Level(cue); n != nil {
		return float64(*n)
	}
	if cue == engine.CueDarkness {
		if dark, known := usualDarkness[r.Colour]; known {
			return dark
		}
	}
	return math.NaN()
}

// group parts openings whose speeds cannot be compared: 1 Pa drives gas through a
// crack as fast as a large fire drives it through a door (v = sqrt(2 dP / rho)).
type group uint8

const (
	wallGroup group = iota
	gapGroup
	roofGroup
)

func (o *seen) group() group {
	switch {
	case o.Kind == engine.SeenRoof || o.Kind == engine.SeenHatch:
		return roofGroup
	case o.Kind == engine.SeenCrack || o.State == engine.StateClosed:
		return gapGroup
	}
	return wallGroup
}

// likeSizeRatio is how far two areas may differ and still count as like-sized:
// twice the opening about halves the speed of the same outflow. Chosen by us.
const likeSizeRatio = 2.0

// like reports whether the speeds at two openings may be compared.
func (o *seen) like(other *seen) bool {
	if o.class != other.class {
		return false
	}
	if o.area > 0 && other.area > 0 {
		return o.area <= likeSizeRatio*other.area && other.area <= likeSizeRatio*o.area
	}
	return o.Kind == other.Kind
}

func (o *seen) isOpen() truth {
	switch o.State {
	case engine.StateOpen, engine.StatePart, engine.StateBroken:
		return yes
	case engine.StateClosed:
		return no
	}
	return unknown
}
