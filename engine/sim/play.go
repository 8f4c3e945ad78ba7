package sim

import (
	"math"

	"lintel/engine"
	"lintel/engine/zone"
)

// Play runs a scenario to its end and keeps every everyS seconds of it.
func Play(sc engine.Scenario, library Library, everyS float64) (engine.Series, error) {
	if !(everyS >= zone.StepS) {
		return engine.Series{}, engine.Bad("every", "is shorter than a step", "give 0.05 s or more")
	}
	r, err := New(sc, library)
	if err != nil {
		return engine.Series{}, err
	}
	s := emptySeries(r)
	for k := 0; ; k++ {
		at := float64(float64(k) * everyS)
		if at > sc.EndS+1e-9 {
			break
		}
		if err := r.Advance(math.Max(0, at-r.TimeS()-r.owed)); err != nil {
			return engine.Series{}, err
		}
		r.recordRooms(&s)
		if err := r.recordFlows(&s); err != nil {
			return engine.Series{}, err
		}
	}
	s.Events = r.Events()
	return s, nil
}

func emptySeries(r *Run) engine.Series {
	s := engine.Series{
		Compartments: map[string]engine.CompartmentSeries{},
		Openings:     map[string]engine.OpeningSeries{},
		Events:       []engine.Event{},
	}
	for _, c := range r.scenario.Compartments {
		s.Compartments[c.ID] = engine.CompartmentSeries{}
	}
	for _, o := range r.scenario.Openings {
		s.Openings[o.ID] = engine.OpeningSeries{}
	}
	return s
}

// recordRooms adds the rooms at this instant to a series.
func (r *Run) recordRooms(s *engine.Series) {
	s.TS = append(s.TS, r.TimeS())
	s.HRRKW = append(s.HRRKW, r.model.HRR/1000)
	s.Stage = append(s.Stage, r.stage)
	for i, c := range r.scenario.Compartments {
		f := compartmentFrame(&r.model.Rooms[i])
		list := s.Compartments[c.ID]
		list.UpperC = append(list.UpperC, f.UpperC)
		list.LowerC = append(list.LowerC, f.LowerC)
		list.InterfaceM = append(list.InterfaceM, seen(f.InterfaceM))
		list.O2Upper = append(list.O2Upper, f.O2Upper)
		list.O2Lower = append(list.O2Lower, f.O2Lower)
		list.FuelGasUpper = append(list.FuelGasUpper, f.FuelGasUpper)
		list.HRRKW = append(list.HRRKW, f.HRRKW)
		list.PressurePa = append(list.PressurePa, f.PressurePa)
		s.Compartments[c.ID] = list
	}
}

// recordFlows adds the openings. Flows come of a step, so those at time 0 are
// of a twin that has gone on to the first look, a fifth of a second later: the
// gas that a scenario starts with pushes from the beginning.
func (r *Run) recordFlows(s *engine.Series) error {
	if r.model.Steps == 0 {
		r = r.Clone()
		if err := r.Advance(lookEvery * zone.StepS); err != nil {
			return err
		}
	}
	for i, o := range r.scenario.Openings {
		f := r.openingFrame(i)
		list := s.Openings[o.ID]
		list.InKgS = append(list.InKgS, f.InKgS)
		list.OutKgS = append(list.OutKgS, f.OutKgS)
		list.NeutralM = append(list.NeutralM, seen(f.NeutralM))
		list.TopVelocityMS = append(list.TopVelocityMS, f.TopVelocityMS)
		list.Cues = append(list.Cues, r.ratings[i].Reading(&r.scenario.Openings[i], r.model.Vents[i].Open))
		s.Openings[o.ID] = list
	}
	return nil
}

// seen turns "there is none" into nil.
func seen(x float64) *float64 {
	if math.IsNaN(x) {
		return nil
	}
	return &x
}
