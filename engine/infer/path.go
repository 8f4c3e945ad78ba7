package infer

import (
	"math"

	"lintel/engine"
	"lintel/engine/internal/num"
)

// What a path's note says where the path could not be drawn in full.
const (
	noPlanNote     = "path/no_plan"
	noFlowNote     = "path/no_flow"
	noInletNote    = "path/no_inlet"
	noOutletNote   = "path/no_outlet"
	noWayNote      = "path/no_way"
	throughOneNote = "path/through_one"
)

// path is the flow path: from the inlet by way of the seat's compartment to the
// outlet, as ids of openings and compartments in turn. Without a plan it joins the
// outside openings through one unknown inside, and its note says so.
func (s *scene) path(roles []engine.Role, near []float64) ([]string, string) {
	outlet := s.strongestOutlet(roles)
	if s.plan == nil {
		return s.planlessPath(roles, near, outlet)
	}
	g := s.graph()
	seat := g.seat(s, near, roles)
	inlet := s.easiestInlet(g, seat, roles, outlet)
	path, note := s.ends(roles, inlet, outlet)
	if inlet < 0 || outlet < 0 {
		return path, note
	}
	way, ok := g.route(g.inside(s.now[inlet].ID), seat, g.inside(s.now[outlet].ID))
	if !ok {
		return path, noWayNote
	}
	full := append([]string{s.now[inlet].ID}, way...)
	return append(full, s.now[outlet].ID), note
}

func (s *scene) planlessPath(roles []engine.Role, near []float64, outlet int) ([]string, string) {
	inlet := -1
	for i, role := range roles {
		if i == outlet && role != engine.RoleBoth || !takesIn(role) {
			continue
		}
		if inlet < 0 || s.likelierInlet(i, inlet, roles, near) {
			inlet = i
		}
	}
	path, note := s.ends(roles, inlet, outlet)
	if note == "" {
		note = noPlanNote
	}
	return path, note
}

// likelierInlet compares two inlets without a plan: of two that do alike, the one with
// more of itself below its neutral plane, then the nearer to the seat.
func (s *scene) likelierInlet(i, best int, roles []engine.Role, near []float64) bool {
	rank, most := s.inletRank(i, roles[i]), s.inletRank(best, roles[best])
	if rank != most || roles[i] != engine.RoleBoth {
		return rank > most || rank == most && s.nearer(near, i, best)
	}
	below, other := s.now[i].below(), s.now[best].below()
	return below > other || below >= other && s.nearer(near, i, best)
}

// ends is the path as far as its two ends are known.
func (s *scene) ends(roles []engine.Role, inlet, outlet int) ([]string, string) {
	switch {
	case inlet < 0 && outlet < 0:
		return []string{}, noFlowNote
	case inlet < 0:
		return []string{s.now[outlet].ID}, noInletNote
	case outlet < 0:
		return []string{s.now[inlet].ID}, noOutletNote
	case inlet == outlet:
		return []string{s.now[inlet].ID, s.now[outlet].ID}, throughOneNote
	}
	return []string{s.now[inlet].ID, s.now[outlet].ID}, ""
}

func takesIn(r engine.Role) bool { return r == engine.RoleIn || r == engine.RoleBoth }

// inletRank prefers an opening that only takes air in to a two-way one, and either to
// the cracks of one seen shut.
func (s *scene) inletRank(i int, r engine.Role) int {
	rank := 0
	if s.now[i].isOpen() != no {
		rank = 2
	}
	if r == engine.RoleIn {
		rank++
	}
	return rank
}

// below is the share of a two-way opening under its neutral plane, which takes air in;
// half where no plane was seen (chosen by us).
func (o *seen) below() float64 {
	if o.NeutralPlane == nil {
		return 0.5
	}
	return num.Clamp(*o.NeutralPlane, 0.05, 0.95)
}

// strongestOutlet is the opening through which most smoke is seen to leave: area
// times speed, of a two-way one that above its neutral plane.
func (s *scene) strongestOutlet(roles []engine.Role) int {
	best, most := -1, 0.0
	for i, role := range roles {
		if role != engine.RoleOut && role != engine.RoleBoth {
			continue
		}
		flow := s.outflow(i)
		if role == engine.RoleBoth {
			flow *= 1 - s.now[i].below()
		}
		if best < 0 || flow > most || flow == most && s.now[i].ID < s.now[best].ID {
			best, most = i, flow
		}
	}
	return best
}

// unknownAreaM2 and unknownVelocity stand for what was not seen: a plain window
// and a steady outflow. crackShare is that of its frame by which an opening seen shut
// leaks (0.5 to 1 per cent, see zone). Chosen by us.
const (
	unknownAreaM2   = 1.0
	unknownVelocity = 2.0
	crackShare      = 0.01
)

func (s *scene) outflow(i int) float64 {
	area, velocity := s.now[i].area, level(&s.now[i].Reading, engine.CueVelocity)
	if area == 0 {
		area = unknownAreaM2
	}
	if math.IsNaN(velocity) {
		velocity = unknownVelocity
	}
	if s.now[i].isOpen() == no {
		area *= crackShare
	}
	return area * velocity
}

// easiestInlet is the inlet from which air reaches the seat with the least
// resistance. Where the plan tells none, one that only takes air in goes first; an
// opening seen shut is an inlet where no other takes air in.
func (s *scene) easiestInlet(g *graph, seat int, roles []engine.Role, outlet int) int {
	best, least := -1, math.Inf(1)
	for i, role := range roles {
		if i == outlet && role != engine.RoleBoth || !takesIn(role) {
			continue
		}
		inside := g.inside(s.now[i].ID)
		resistance := math.Inf(1)
		if inside >= 0 {
			resistance = g.openingResistance(s.now[i].ID)
			if role == engine.RoleBoth {
				resistance /= s.now[i].below() * s.now[i].below() // goes by the area squared
			}
			if seat >= 0 {
				resistance += g.distances(seat)[inside]
			}
		}
		if best < 0 || s.betterInlet(i, best, roles, resistance-least) {
			best, least = i, resistance
		}
	}
	return best
}

// betterInlet compares two inlets: one not seen shut, then the lesser resistance,
// then what it does, then the name.
func (s *scene) betterInlet(i, best int, roles []engine.Role, harder float64) bool {
	if shut, other := s.now[i].isOpen() == no, s.now[best].isOpen() == no; shut != other {
		return other
	}
	if harder < 0 || harder > 0 {
		return harder < 0
	}
	rank, most := s.inletRank(i, roles[i]), s.inletRank(best, roles[best])
	return rank > most || rank == most && s.now[i].ID < s.now[best].ID
}
