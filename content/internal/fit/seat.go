package main

import (
	"lintel/content/internal/measured"
	"lintel/engine/infer"
)

// What is counted for a rule on nearness, over moments in which openings of more
// than one room were seen. For such rules a fire is one opening at one moment.
const (
	leadsToSeat     = "the opening leads into the room that burns most"
	leadsElsewhere  = "the opening does not lead into the room that burns most"
	fastestMisleads = "the fastest opening does not lead into the room that burns most"
)

// seatRule counts how often a rule on nearness was right.
func seatRule(r *infer.Rule, s sample) measured.Rule {
	out := measured.Rule{Rule: r.ID, Claim: leadsToSeat}
	if r.Nearness < 0 {
		out.Claim = leadsElsewhere
	}
	if r.At == infer.AtBuilding {
		out.Claim = fastestMisleads
	}
	all, base := 0, 0
	for i := range s.examples {
		e := &s.examples[i]
		m := &s.moments[e.moment]
		if !e.exact || m.rooms() < 2 {
			continue
		}
		for _, id := range m.judged(r) {
			all++
			right := m.leads(id) == (out.Claim == leadsToSeat)
			if right {
				base++
			}
			if fires(r, e, id) {
				out.Fires++
				if right {
					out.Hits++
				}
			}
		}
	}
	out.Share, out.Base = ratio(out.Hits, out.Fires), ratio(base, all)
	return out
}

// judged are the openings that a rule is counted over: all of them, or for a rule
// on the building the one that is fastest, if one is.
func (m *moment) judged(r *infer.Rule) []string {
	var ids []string
	if r.At == infer.AtOpening {
		for i := range m.Now.Openings {
			ids = append(ids, m.Now.Openings[i].ID)
		}
		return ids
	}
	fastest, ties := -1, 0
	for i := range m.Now.Openings {
		switch v := m.Now.Openings[i].Velocity; {
		case v == nil:
		case fastest < 0 || *v > *m.Now.Openings[fastest].Velocity:
			fastest, ties = i, 0
		case *v == *m.Now.Openings[fastest].Velocity:
			ties++
		}
	}
	if fastest < 0 || ties > 0 {
		return nil
	}
	return []string{m.Now.Openings[fastest].ID}
}

func fires(r *infer.Rule, e *example, id string) bool {
	if r.At == infer.AtOpening {
		return indexOf(e.at[r.ID], id) >= 0
	}
	return e.fired(r.ID)
}

// rooms counts the rooms that the openings of the look lead into.
func (m *moment) rooms() int {
	rooms := map[string]bool{}
	for i := range m.Now.Openings {
		rooms[m.room(m.Now.Openings[i].ID)] = true
	}
	return len(rooms)
}

func (m *moment) leads(id string) bool { return m.room(id) == m.Seat }

func (m *moment) room(id string) string {
	for i := range m.Plan.Openings {
		if m.Plan.Openings[i].ID == id {
			return m.Plan.Openings[i].From
		}
	}
	return ""
}
