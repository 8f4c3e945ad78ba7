package main

import (
	"math/rand/v2"
	"strings"
	"sync"

	"lintel/content"
	"lintel/engine"
	"lintel/engine/sim"
)

// How a fire is looked at. Chosen by us.
const (
	momentsPerFire = 8
	betweenS       = 60.0  // mean time between the moments of one fire
	firstS         = 15.0  // mean time to the first
	lastMoments    = 2     // of a fire that dies down or was put out
	lookApartS     = 20.0  // between the two looks of a moment
	aheadS         = 120.0 // how far ahead an event counts
	moveChance     = 0.5   // that something is moved before a moment
	waterChance    = 0.06  // that water is put on before a moment
)

// conditions ends the kind of an event that says that a hazard's conditions hold;
// they count when they came up this lately, s.
const (
	conditions = "_conditions"
	lately     = 60.0
)

// moment is one instant of one fire: two looks, and what was true.
type moment struct {
	Seed    uint64
	Before  engine.Look
	Now     engine.Look
	Plan    *engine.Plan
	Stage   engine.Stage
	Regime  engine.Regime
	Seat    string // compartment that burns most
	Hazards [4]bool
}

// burnAll burns the fires, a few at once. A fire whose scenario is refused counts
// as none, and the number of moments shows it.
func burnAll(fires int, seed uint64, workers int) []moment {
	lists := make([][]moment, fires)
	next := make(chan int)
	var wait sync.WaitGroup
	for range max(workers, 1) {
		wait.Go(func() {
			for i := range next {
				lists[i] = burn(seed + uint64(i))
			}
		})
	}
	for i := range fires {
		next <- i
	}
	close(next)
	wait.Wait()
	var all []moment
	for _, list := range lists {
		all = append(all, list...)
	}
	return all
}

func burn(seed uint64) []moment {
	run, err := sim.New(draw(seed), content.Library())
	if err != nil {
		return nil
	}
	rng := rand.New(rand.NewPCG(seed, 2))
	var list []moment
	wet, endings := false, 0
	for n := range momentsPerFire {
		between := betweenS
		if n == 0 {
			between = firstS
		}
		if run.Advance(between*rng.ExpFloat64()) != nil {
			return list
		}
		before := run.Readings()
		poured := false
		wet, poured = act(run, before.Plan, rng, wet)
		if run.Advance(lookApartS) != nil {
			return list
		}
		now := run.Readings()
		now.Looks[0].Water = &poured
		m := moment{
			Seed: seed, Before: before.Looks[0], Now: now.Looks[0], Plan: now.Plan,
			Stage: run.Stage(), Regime: run.Regime(), Seat: seat(run, now.Plan),
		}
		m.Hazards = ahead(run, now.Plan)
		list = append(list, m)
		if over(m.Stage) {
			if endings++; endings == lastMoments {
				break
			}
		}
	}
	return list
}

// over reports whether a fire is on its way out.
func over(s engine.Stage) bool { return s == engine.Decay || s == engine.AfterKnockDown }

// act may move an opening or put water on, as crews and fires do. Water once begun
// goes on; the look after it notes it.
func act(run *sim.Run, plan *engine.Plan, rng *rand.Rand, wet bool) (again, poured bool) {
	if rng.Float64() < moveChance {
		o := plan.Openings[rng.IntN(len(plan.Openings))]
		share := 1.0
		if *o.Open > 0 {
			share = 0
		}
		if o.Kind != engine.Leak {
			_ = run.Apply(engine.Move{Opening: o.ID, Open: &share})
		}
	}
	if wet || rng.Float64() < waterChance {
		room := seat(run, plan)
		litres := 0.6 * volume(plan, room) * rng.ExpFloat64()
		poured = run.Apply(engine.Move{WaterL: &litres, In: room}) == nil
	}
	return wet || poured, poured
}

func volume(plan *engine.Plan, room string) float64 {
	for _, c := range plan.Compartments {
		if c.ID == room {
			return c.WidthM * c.DepthM * c.HeightM
		}
	}
	return 0
}

func seat(run *sim.Run, plan *engine.Plan) string {
	best := 0
	rooms := run.Model().Rooms
	for i := range rooms {
		if rooms[i].Out.BurnW > rooms[best].Out.BurnW {
			best = i
		}
	}
	return plan.Compartments[best].ID
}

// ahead looks for each rapid event in the time ahead: as things stand, and in a
// twin in which everything is opened. A hazard is true when either shows it: its
// conditions are there.
func ahead(run *sim.Run, plan *engine.Plan) [4]bool {
	var found [4]bool
	told, since := len(run.Events()), run.TimeS()-lately
	note := func(twin *sim.Run) {
		if twin.Advance(aheadS) == nil {
			mark(&found, twin.Events(), told, since)
		}
	}
	note(run.Clone())
	opened := run.Clone()
	for _, o := range plan.Openings {
		if *o.Open < 1 {
			_ = opened.Apply(engine.Move{Opening: o.ID, Open: new(1.0)})
		}
	}
	note(opened)
	return found
}

// mark notes the hazards that events tell of: of the first, which were told before
// now, only conditions that came up since a moment ago.
func mark(found *[4]bool, events []engine.Event, told int, since float64) {
	for i, event := range events {
		if i < told && (event.TS < since || !strings.HasSuffix(event.Kind, conditions)) {
			continue
		}
		for h, hazard := range engine.Hazards {
			found[h] = found[h] || event.Kind == string(hazard) || event.Kind == string(hazard)+conditions
		}
	}
}
