package sim

import (
	"math"

	"lintel/engine"
	"lintel/engine/cue"
	"lintel/engine/optics"
	"lintel/engine/zone"
)

// unrated marks a rating that was never given.
var unrated = cue.Rating{Volume: -1, Velocity: -1, Density: -1, Darkness: -1}

// physical is one opening in plain numbers, as the optics and the cues want it.
func (r *Run) physical(i int) cue.Physical {
	o, v := &r.scenario.Openings[i], &r.model.Vents[i]
	room := &r.model.Rooms[v.A]
	p := cue.Physical{
		Kind: o.Kind, FrameM2: r.frameArea(i), HeightM: o.HeightM, SillM: o.SillM,
		RoomHeightM: room.Height, AmbientC: r.model.Ambient - zone.Kelvin,
		Pulsing: r.pulsing[i], NeutralPlane: math.NaN(),
	}
	p.OpenM2 = p.FrameM2 * v.Free()
	p.OutKgS, p.InKgS = r.through(i)
	p.OutTempC = p.AmbientC
	p.Lightness = 1
	if !v.Horizontal && o.HeightM > 0 {
		p.NeutralPlane = (v.Flow.Neutral - v.Slot.Sill) / o.HeightM
	}
	r.outflow(i, v, &p)
	p.FlameKW = r.flameAt(v, &p)
	return p
}

// outflow adds what leaves: its volume, speed and look.
func (r *Run) outflow(i int, v *zone.Vent, p *cue.Physical) {
	stream := r.model.Leaving(i)
	if stream.Mass <= 0 {
		return
	}
	p.OutM3S = stream.Volume()
	p.OutTempC = stream.Temp() - zone.Kelvin
	area := p.OpenM2
	if !v.Horizontal {
		p.OutBandM = v.Flow.OutBand
		area = v.Flow.OutBand * v.Slot.Width * v.Free()
	}
	if area <= 0 {
		return
	}
	p.OutVelocityMS = p.OutM3S / area
	p.TopVelocityMS = math.Max(p.OutVelocityMS, r.topVelocity(v))
	smoke := optics.Smoke{
		Soot:  stream.Concentration(zone.Soot),
		Tar:   stream.Concentration(zone.Tar),
		Water: r.model.Mist(&stream),
	}
	look := smoke.See()
	p.ExtinctionM, p.Lightness, p.Tint, p.Steam = look.ExtinctionM, look.Lightness, look.Tint, look.Steam
	p.OpticalDepth = optics.Depth(look.ExtinctionM, optics.Path(area))
}

// topVelocity is the speed outward at the top of a vertical opening, C√(2Δp/ρ);
// negative where gas comes in there (CFAST Tech. Ref., wall vents).
func (r *Run) topVelocity(v *zone.Vent) float64 {
	if v.Horizontal {
		return 0
	}
	density := r.topDensity(v)
	speed := zone.FlowCoefficient * math.Sqrt(2*math.Abs(v.Flow.TopOver)/density)
	return math.Copysign(speed, v.Flow.TopOver)
}

// topDensity is that of the gas that moves at the top of the opening.
func (r *Run) topDensity(v *zone.Vent) float64 {
	m := r.model
	if v.Flow.TopOver < 0 {
		if v.B == zone.OutsideRoom {
			return zone.Density / m.Ambient
		}
		return densityAt(&m.Rooms[v.B], v.Slot.Head)
	}
	return densityAt(&m.Rooms[v.A], v.Slot.Head)
}

func densityAt(room *zone.Room, height float64) float64 {
	layer := zone.Lower
	if height > room.Floor+room.Interface() {
		layer = zone.Upper
	}
	return zone.Density / room.Gas[layer].Temp()
}

// Rating is the exact rating of one opening at this moment, by its place in the
// scenario, from the moment alone.
func (r *Run) Rating(opening int) cue.Rating {
	p := r.physical(opening)
	return cue.Rate(&p, &r.library.Scales, nil)
}

// Physical is what the rating rests on.
func (r *Run) Physical(opening int) cue.Physical { return r.physical(opening) }

// Readings is what a careful person would write down now: every opening to the
// outside, rated exactly, with the plan.
func (r *Run) Readings() engine.Readings {
	now := r.TimeS()
	look := engine.Look{TS: &now, Wind: r.wind()}
	// Who put water on, or saw it done, still knows it some seconds later.
	wet := r.water > 0 && now-r.wateredAt <= recentS
	for i := range r.model.Rooms {
		wet = wet || r.model.Rooms[i].Spray > 0.001
	}
	look.Water = &wet
	for i := range r.scenario.Openings {
		o := &r.scenario.Openings[i]
		if o.To != engine.Outside {
			continue
		}
		rating := r.Rating(i)
		reading := rating.Reading(o, r.model.Vents[i].Open)
		floor := r.storey(r.model.Vents[i].A)
		reading.Floor = &floor
		look.Openings = append(look.Openings, reading)
	}
	look.Changes = r.recent(now)
	return engine.Readings{V: 1, Plan: r.plan(), Looks: []engine.Look{look}}
}

// recentS is how long a look still lists a change, or water. Chosen by us.
const recentS = 30.0

func (r *Run) recent(now float64) []engine.Change {
	var list []engine.Change
	for _, c := range r.changes {
		if now-c.at <= recentS {
			list = append(list, engine.Change{Opening: r.scenario.Openings[c.opening].ID, State: cue.State(c.share)})
		}
	}
	return list
}

func (r *Run) wind() *engine.Wind {
	speed := r.model.WindMS
	return &engine.Wind{MS: &speed, From: r.model.WindOn}
}

// plan copies the building as it stands.
func (r *Run) plan() *engine.Plan {
	p := engine.Plan{
		Compartments: append([]engine.Compartment(nil), r.scenario.Compartments...),
		Openings:     append([]engine.Opening(nil), r.scenario.Openings...),
	}
	for i := range p.Openings {
		open := r.model.Vents[i].Open
		p.Openings[i].Open = &open
	}
	return &p
}

// storey counts floors from the lowest, 1 up.
func (r *Run) storey(room int) int {
	level, floor := 1, r.model.Rooms[room].Floor
	for i := range r.model.Rooms {
		below := r.model.Rooms[i].Floor
		first := below < floor-0.1
		for j := range i {
			first = first && math.Abs(r.model.Rooms[j].Floor-below) > 0.1
		}
		if first {
			level++
		}
	}
	return level
}
