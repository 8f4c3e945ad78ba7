package infer

import (
	"math"

	"lintel/engine"
)

// roles says what each opening of the look does: as seen, and where the flow was
// not seen, by what must follow.
func (s *scene) roles(f *facts) []engine.Role {
	roles := make([]engine.Role, len(s.now))
	for i := range s.now {
		roles[i] = s.now[i].role(f.openings[i][fSmoke])
	}
	s.balance(roles)
	return roles
}

// role is read off one opening alone.
func (o *seen) role(smoke float64) engine.Role {
	switch o.Flow {
	case engine.FlowIn:
		return engine.RoleIn
	case engine.FlowOut:
		return engine.RoleOut
	case engine.FlowBoth:
		return engine.RoleBoth
	case engine.FlowNone:
		return engine.RoleNone
	}
	switch {
	case o.NeutralPlane != nil && *o.NeutralPlane > 0 && *o.NeutralPlane < 1:
		return engine.RoleBoth
	case smoke == 1:
		return engine.RoleOut
	case smoke == 0 && o.isOpen() == no:
		return engine.RoleNone
	}
	return engine.RoleUnknown
}

// balance uses that what leaves a building must come in somewhere: where every
// flow that was seen is one way and a single open opening was not seen, that one
// goes the other way.
func (s *scene) balance(roles []engine.Role) {
	missing, in, out := -1, 0, 0
	for i, role := range roles {
		switch role {
		case engine.RoleBoth:
			return
		case engine.RoleIn:
			in++
		case engine.RoleOut:
			out++
		case engine.RoleUnknown:
			if s.now[i].isOpen() != yes {
				continue
			}
			if missing >= 0 {
				return
			}
			missing = i
		}
	}
	switch {
	case missing < 0:
	case out > 0 && in == 0:
		roles[missing] = engine.RoleIn
	case in > 0 && out == 0:
		roles[missing] = engine.RoleOut
	}
}

func (s *scene) openingFindings(f *facts, roles []engine.Role, near []float64) map[string]engine.OpeningFinding {
	findings := make(map[string]engine.OpeningFinding, len(s.now))
	for i := range s.now {
		finding := engine.OpeningFinding{Role: roles[i], Nearness: near[i], NeutralPlane: s.now[i].NeutralPlane}
		if finding.NeutralPlane == nil {
			finding.NeutralPlane = s.estimatePlane(i, f, roles[i])
			finding.Estimated = finding.NeutralPlane != nil
		}
		findings[s.now[i].ID] = finding
	}
	return findings
}

// usualPlane is where the neutral plane of a two-way opening usually sits, as a
// fraction of its height, by the level of velocity. One opening on a room mixed
// at gas temperature Tg has it at 1/(1+(Tg/Ta)^(1/3)): 0.49 at 50 C, 0.44 at
// 300 C, 0.40 at 700 C; a layer that does not yet fill the room lifts it, to
// 0.50 to 0.58 in the steady single-room tests of NBSIR 82-2520. The medians of
// two-way openings in 500 simulated fires were 0.51, 0.51, 0.56, 0.51 and 0.40.
// Between them chosen by us.
var usualPlane = [engine.TopLevel + 1]float64{0.52, 0.52, 0.55, 0.50, 0.41}

// planeShift is how far an opening elsewhere moves the plane: an outlet above
// lifts it, an inlet below lowers it. Chosen by us.
const planeShift = 0.08

// estimatePlane gives the neutral plane that was not seen: the sill for an
// outlet, the head for an inlet, and the usual place for a two-way opening.
func (s *scene) estimatePlane(i int, f *facts, role engine.Role) *float64 {
	switch role {
	case engine.RoleOut:
		return new(0.0)
	case engine.RoleIn:
		return new(1.0)
	case engine.RoleBoth:
	default:
		return nil
	}
	plane := usualPlane[2]
	if v := f.openings[i][fVelocity]; !math.IsNaN(v) {
		plane = usualPlane[int(v)]
	}
	for j := range s.now {
		switch {
		case j == i:
		case s.now[j].Flow == engine.FlowOut:
			return new(plane + planeShift)
		case s.now[j].Flow == engine.FlowIn:
			return new(plane - planeShift)
		}
	}
	return &plane
}
