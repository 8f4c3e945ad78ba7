package infer

import (
	"math"

	"lintel/engine"
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
		if inlet < 0 || inletRank(role) > inletRank(roles[inlet]) || inletRank(role) == inletRank(roles[inlet]) && s.nearer(near, i, inlet) {
			inlet = i
		}
	}
	path, note := s.ends(roles, inlet, outlet)
	if note == "" {
		note = noPlanNote
	}
	return path, note
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

// inletRank prefers an opening that only takes air in.
func inletRank(r engine.Role) int {
	if r == engine.RoleIn {
		return 1
	}
	return 0
}

// strongestOutlet is the opening through which most smoke is seen to leave: area
// times speed, half for one that also takes air in.
func (s *scene) strongestOutlet(roles []engine.Role) int {
	best, most := -1, 0.0
	for i, role := range roles {
		if role != engine.RoleOut && role != engine.RoleBoth {
			continue
		}
		flow := s.outflow(i)
		if role == engine.RoleBoth {
			flow /= 2
		}
		if best < 0 || flow > most || flow == most && s.now[i].ID < s.now[best].ID {
			best, most = i, flow
		}
	}
	return best
}

// unknownAreaM2 and unknownVelocity stand for what was not seen: a plain window
// and a steady outflow. Chosen by us.
const (
	unknownAreaM2   = 1.0
	unknownVelocity = 2.0
)

func (s *scene) outflow(i int) float64 {
	area, velocity := s.now[i].area, level(&s.now[i].Reading, engine.CueVelocity)
	if area == 0 {
		area = unknownAreaM2
	}
	if math.IsNaN(velocity) {
		velocity = unknownVelocity
	}
	return area * velocity
}

// easiestInlet is the inlet from which air reaches the seat with the least
// resistance, an opening that only takes air in before a two-way one.
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
			if seat >= 0 {
				resistance += g.distances(seat)[inside]
			}
		}
		better := best < 0 || inletRank(role) > inletRank(roles[best])
		if !better && inletRank(role) == inletRank(roles[best]) {
			better = resistance < least || resistance == least && s.now[i].ID < s.now[best].ID
		}
		if better {
			best, least = i, resistance
		}
	}
	return best
}
