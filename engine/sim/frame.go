package sim

import (
	"math"
	"slices"

	"lintel/engine"
	"lintel/engine/cue"
	"lintel/engine/zone"
)

// Frame fills a frame with this instant. It allocates only where the frame is
// too small. Ratings are held steady against those of the last frame.
func (r *Run) Frame(f *engine.Frame) {
	f.Compartments = sized(f.Compartments, len(r.scenario.Compartments))
	f.Openings = sized(f.Openings, len(r.scenario.Openings))
	f.Header = engine.FrameHeader{
		TS: r.TimeS(), HRRKW: r.model.HRR / 1000,
		Stage:  float64(slices.Index(engine.Stages, r.stage)),
		WindMS: r.model.WindMS, Events: float64(len(r.watch.events)),
	}
	if r.Regime() == engine.VentilationLimited {
		f.Header.Regime = 1
	}
	for i := range f.Compartments {
		f.Compartments[i] = compartmentFrame(&r.model.Rooms[i])
	}
	for i := range f.Openings {
		f.Openings[i] = r.openingFrame(i)
	}
}

func sized[T any](list []T, n int) []T {
	if cap(list) < n {
		return make([]T, n)
	}
	return list[:n]
}

func compartmentFrame(room *zone.Room) engine.CompartmentFrame {
	upper, lower := &room.Gas[zone.Upper], &room.Gas[zone.Lower]
	return engine.CompartmentFrame{
		UpperC: upper.Temp() - zone.Kelvin, LowerC: lower.Temp() - zone.Kelvin,
		InterfaceM: interfaceOf(room),
		O2Upper:    upper.OxygenMoles(), O2Lower: lower.OxygenMoles(),
		FuelGasUpper: upper.Fraction(zone.Fuel), COUpper: upper.COMoles(),
		SootUpper: 1000 * upper.Concentration(zone.Soot), AerosolUpper: 1000 * upper.Concentration(zone.Tar),
		HRRKW: room.Out.BurnW / 1000, PressurePa: room.Pressure, FloorFluxKW: room.Out.FloorFlux / 1000,
	}
}

// interfaceOf is NaN where no layer is to be told.
func interfaceOf(room *zone.Room) float64 {
	if !room.Layered() {
		return math.NaN()
	}
	return room.Interface()
}

func (r *Run) openingFrame(i int) engine.OpeningFrame {
	v := &r.model.Vents[i]
	p := r.physical(i)
	before := &r.ratings[i]
	if before.Volume < 0 {
		before = nil
	}
	rating := cue.Rate(&p, &r.library.Scales, before)
	r.ratings[i] = rating
	f := engine.OpeningFrame{
		Open: v.Open, InKgS: p.InKgS, OutKgS: p.OutKgS,
		NeutralM:      v.Flow.Neutral - r.model.Rooms[v.A].Floor,
		TopVelocityMS: r.topVelocity(v), OutVelocityMS: p.OutVelocityMS, InVelocityMS: r.inVelocity(i, v),
		OutTempC: p.OutTempC, ExtinctionM: p.ExtinctionM, OpticalDepth: p.OpticalDepth,
		Lightness: p.Lightness, Tint: p.Tint, Steam: p.Steam,
		Churning: p.Rolls(&r.library.Scales), Pulsing: p.Pulsing, FlameKW: p.FlameKW,
		Flow:         flowNumber(rating.Flow),
		NeutralPlane: rating.NeutralPlane,
		Volume:       float64(rating.Volume), Velocity: float64(rating.Velocity),
		Density: float64(rating.Density), Darkness: float64(rating.Darkness),
		Colour: math.NaN(),
	}
	if v.Horizontal {
		f.NeutralM = math.NaN()
		f.TopVelocityMS = p.OutVelocityMS
	}
	if k := slices.Index(engine.Colours, rating.Colour); k >= 0 {
		f.Colour = float64(k)
	}
	return f
}

// inVelocity is the mean speed of the inflow over its band.
func (r *Run) inVelocity(i int, v *zone.Vent) float64 {
	area := r.frameArea(i) * v.Free()
	if !v.Horizontal {
		area = v.Flow.InBand * v.Slot.Width * v.Free()
	}
	if area <= 0 {
		return 0
	}
	return r.model.Arriving(i) * r.model.ArrivingTemp(i) / zone.Density / area
}

func flowNumber(flow engine.Flow) float64 {
	switch flow {
	case engine.FlowIn:
		return 1
	case engine.FlowOut:
		return 2
	case engine.FlowBoth:
		return 3
	}
	return 0
}
