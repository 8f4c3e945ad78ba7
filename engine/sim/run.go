package sim

import (
	"math"
	"sort"

	"lintel/engine"
	"lintel/engine/cue"
	"lintel/engine/truth"
	"lintel/engine/zone"
)

// Library is the content that a run needs.
type Library struct {
	Materials engine.Materials
	Scales    cue.Scales
}

// Run is a scenario that is running.
type Run struct {
	scenario  engine.Scenario
	library   Library
	model     *zone.Model
	rooms     map[string]int
	openings  map[string]int
	next      int // move to come
	owed      float64
	water     float64 // put in so far, litres
	wateredAt float64 // when last
	stage     engine.Stage
	tracker   truth.Tracker
	watch     watch
	pulses    []cue.Pulse
	pulsing   []float64
	ratings   []cue.Rating
	changes   []change
}

// change is an opening that was moved, for the look's list of changes.
type change struct {
	at      float64
	opening int
	share   float64
}

// lookEvery is how many steps pass between two looks at stage, events and
// pulsing: 0.2 s. Chosen by us.
const lookEvery = 4

// New builds a run at time 0. The error is an *engine.Problem.
func New(sc engine.Scenario, library Library) (*Run, error) {
	if err := sc.Validate(); err != nil {
		return nil, err
	}
	if err := sc.ValidateMaterials(library.Materials); err != nil {
		return nil, err
	}
	model, err := zone.New(sc, library.Materials)
	if err != nil {
		return nil, err
	}
	sc.Moves = append([]engine.Move(nil), sc.Moves...)
	sort.SliceStable(sc.Moves, func(i, j int) bool { return sc.Moves[i].TS < sc.Moves[j].TS })
	r := &Run{
		scenario: sc, library: library, model: model,
		rooms: map[string]int{}, openings: map[string]int{},
		pulses:  make([]cue.Pulse, len(sc.Openings)),
		pulsing: make([]float64, len(sc.Openings)),
		ratings: make([]cue.Rating, len(sc.Openings)),
	}
	for i, c := range sc.Compartments {
		r.rooms[c.ID] = i
	}
	for i, o := range sc.Openings {
		r.openings[o.ID] = i
	}
	for i := range r.ratings {
		r.ratings[i] = unrated
	}
	r.watch.begin(model)
	r.observe()
	return r, nil
}

// TimeS is how far the run has come.
func (r *Run) TimeS() float64 { return float64(float64(r.model.Steps) * zone.StepS) }

// EndS is where the scenario ends; a run may go on past it.
func (r *Run) EndS() float64 { return r.scenario.EndS }

// Advance runs on by whole steps; what is left of seconds is kept for the next
// call.
func (r *Run) Advance(seconds float64) error {
	if !(seconds >= 0) || math.IsInf(seconds, 0) {
		return engine.Bad("seconds", "is not a time to run on", "give a number of 0 or more")
	}
	r.owed += seconds
	for r.owed >= zone.StepS*(1-1e-9) {
		r.owed -= zone.StepS
		if err := r.step(); err != nil {
			return err
		}
	}
	return nil
}

func (r *Run) step() error {
	now := r.TimeS()
	for r.next < len(r.scenario.Moves) && r.scenario.Moves[r.next].TS <= now+1e-9 {
		move := r.scenario.Moves[r.next]
		r.next++
		if err := r.Apply(move); err != nil {
			return err
		}
	}
	r.model.Step(zone.StepS)
	if r.model.Steps%lookEvery == 0 {
		r.observe()
	}
	return nil
}

// Apply makes a move now; its time is ignored.
func (r *Run) Apply(m engine.Move) error {
	if err := r.scenario.ValidateMove(m); err != nil {
		return err
	}
	switch {
	case m.Open != nil:
		r.setOpening(r.openings[m.Opening], *m.Open, m.OverS)
	case m.Fuel != "":
		return r.addFuel(m)
	case m.WaterL != nil:
		r.model.AddWater(r.rooms[m.In], *m.WaterL)
		r.water += *m.WaterL
		r.wateredAt = r.TimeS()
	default:
		speed := r.model.WindMS
		if m.WindMS != nil {
			speed = *m.WindMS
		}
		r.model.SetWind(speed, m.WindFrom)
	}
	return nil
}

// setOpening remembers how the opening stood, for events and for looks.
func (r *Run) setOpening(opening int, share, over float64) {
	if r.model.Vents[opening].Open == share {
		return
	}
	wider := share > r.model.Vents[opening].Open
	r.model.SetOpening(opening, share, over)
	r.changes = append(r.changes, change{at: r.TimeS(), opening: opening, share: share})
	r.watch.moved(r, opening, wider)
}

func (r *Run) addFuel(m engine.Move) error {
	for _, kind := range r.library.Materials.Fuels {
		if kind.ID == m.Fuel {
			return r.model.AddFuel(r.rooms[m.In], kind, *m.MassKg)
		}
	}
	return engine.Bad("fuel", "is "+m.Fuel+", which is not in the library", "use a fuel of content/fuels")
}

// Clone returns an independent run from the same instant.
func (r *Run) Clone() *Run {
	c := *r
	c.model = r.model.Clone()
	c.watch = r.watch.clone()
	c.pulses = append([]cue.Pulse(nil), r.pulses...)
	c.pulsing = append([]float64(nil), r.pulsing...)
	c.ratings = append([]cue.Rating(nil), r.ratings...)
	c.changes = append([]change(nil), r.changes...)
	return &c
}

// Stage is the true stage of the fire.
func (r *Run) Stage() engine.Stage { return r.stage }

// Regime is what sets the fire's size now.
func (r *Run) Regime() engine.Regime { return r.tracker.Regime() }

// Events lists what the fire did suddenly so far, oldest first.
func (r *Run) Events() []engine.Event { return append([]engine.Event{}, r.watch.events...) }

// Model is the fire itself, for tests and audits.
func (r *Run) Model() *zone.Model { return r.model }
