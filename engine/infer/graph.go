package infer

import (
	"math"

	"lintel/engine"
)

// graph is the inside of the building: compartments joined by openings that
// stand open.
type graph struct {
	plan *engine.Plan
	open []float64 // share open of each planned opening, as last seen
}

// shutShare is the share open below which no flow path is drawn through an
// opening; a shut door still leaks a little. Chosen by us.
const shutShare = 0.02

// partOpen is the share open of an opening seen as part open. Chosen by us.
const partOpen = 0.5

// graph takes the openings as the last looks and changes left them.
func (s *scene) graph() *graph {
	g := &graph{plan: s.plan, open: make([]float64, len(s.plan.Openings))}
	states := s.lastStates()
	for i := range s.plan.Openings {
		g.open[i] = 1
		if share := s.plan.Openings[i].Open; share != nil {
			g.open[i] = *share
		}
		if state, seen := states[s.plan.Openings[i].ID]; seen {
			g.open[i] = openShare(state, g.open[i])
		}
	}
	return g
}

// lastStates is how each opening was last seen to stand, or put.
func (s *scene) lastStates() map[string]engine.OpeningState {
	states := map[string]engine.OpeningState{}
	note := func(id string, state engine.OpeningState) {
		if state != "" && state != engine.StateUnknown {
			states[id] = state
		}
	}
	for i := range s.history {
		for _, change := range s.history[i].Changes {
			note(change.Opening, change.State)
		}
		for j := range s.history[i].Openings {
			note(s.history[i].Openings[j].ID, s.history[i].Openings[j].State)
		}
	}
	return states
}

// openShare keeps the planned share where the state only says that it is open.
func openShare(state engine.OpeningState, planned float64) float64 {
	switch state {
	case engine.StateClosed:
		return 0
	case engine.StatePart:
		if planned > shutShare && planned < 1 {
			return planned
		}
		return partOpen
	}
	if planned > shutShare {
		return planned
	}
	return 1
}

func (g *graph) opening(id string) int {
	for i := range g.plan.Openings {
		if g.plan.Openings[i].ID == id {
			return i
		}
	}
	return -1
}

func (g *graph) compartment(id string) int {
	for i := range g.plan.Compartments {
		if g.plan.Compartments[i].ID == id {
			return i
		}
	}
	return -1
}

// inside is the compartment behind an outside opening, or -1.
func (g *graph) inside(id string) int {
	i := g.opening(id)
	if i < 0 {
		return -1
	}
	if from := g.compartment(g.plan.Openings[i].From); from >= 0 {
		return from
	}
	return g.compartment(g.plan.Openings[i].To)
}

// seat is the compartment behind the opening most likely nearest to the fire, or
// -1 where nothing points to one.
func (g *graph) seat(s *scene, near []float64, roles []engine.Role) int {
	if best := s.nearest(near, roles); best >= 0 {
		return g.inside(s.now[best].ID)
	}
	return -1
}

// resistance of an opening to flow: pressure drops across openings in series add
// as 1/A² (orifice equation, flow proportional to A times root of pressure drop).
func (g *graph) resistance(i int) float64 {
	o := &g.plan.Openings[i]
	area := o.AreaM2
	if area == 0 {
		area = o.WidthM * o.HeightM
	}
	if area *= g.open[i]; area <= 0 || g.open[i] < shutShare {
		return math.Inf(1)
	}
	return 1 / (area * area)
}

func (g *graph) openingResistance(id string) float64 {
	if i := g.opening(id); i >= 0 {
		return g.resistance(i)
	}
	return math.Inf(1)
}

// distances is the least resistance from one compartment to each.
func (g *graph) distances(from int) []float64 {
	distance, _ := g.shortest(from)
	return distance
}

// shortest is Dijkstra's algorithm; via holds the opening by which each
// compartment is reached, -1 where it is not. Equal ways fall to the opening that
// stands first in the plan.
func (g *graph) shortest(from int) (distance []float64, via []int) {
	n := len(g.plan.Compartments)
	distance, via = make([]float64, n), make([]int, n)
	done := make([]bool, n)
	for i := range distance {
		distance[i], via[i] = math.Inf(1), -1
	}
	distance[from] = 0
	for range n {
		at := -1
		for i := range distance {
			if !done[i] && !math.IsInf(distance[i], 1) && (at < 0 || distance[i] < distance[at]) {
				at = i
			}
		}
		if at < 0 {
			break
		}
		done[at] = true
		g.relax(at, distance, via)
	}
	return distance, via
}

func (g *graph) relax(at int, distance []float64, via []int) {
	for i := range g.plan.Openings {
		next := g.across(i, at)
		if next < 0 {
			continue
		}
		if d := distance[at] + g.resistance(i); d < distance[next] {
			distance[next], via[next] = d, i
		}
	}
}

// across is the compartment on the other side of an inner opening, or -1.
func (g *graph) across(opening, from int) int {
	o := &g.plan.Openings[opening]
	a, b := g.compartment(o.From), g.compartment(o.To)
	switch {
	case a < 0 || b < 0:
		return -1
	case a == from:
		return b
	case b == from:
		return a
	}
	return -1
}

// route is the way from one compartment by another (or none, -1) to a third, as
// compartments and openings in turn.
func (g *graph) route(from, by, to int) ([]string, bool) {
	if from < 0 || to < 0 {
		return nil, false
	}
	if by < 0 {
		by = from
	}
	first, ok := g.leg(from, by)
	second, also := g.leg(by, to)
	if !ok || !also {
		// The seat cannot be reached by a way known to be open: leave it out.
		return g.leg(from, to)
	}
	return append(first, second[1:]...), true
}

// leg is the shortest way between two compartments.
func (g *graph) leg(from, to int) ([]string, bool) {
	distance, via := g.shortest(from)
	if math.IsInf(distance[to], 1) {
		return nil, false
	}
	way := []string{g.plan.Compartments[to].ID}
	for at := to; at != from; {
		opening := via[at]
		at = g.across(opening, at)
		way = append([]string{g.plan.Compartments[at].ID, g.plan.Openings[opening].ID}, way...)
	}
	return way, true
}
