package zone

import (
	"lintel/engine/internal/num"
)

// These are what a run reads off the model between steps.

// Leaving is the stream that leaves a vent's room A through it, per second.
func (m *Model) Leaving(vent int) Layer {
	v := &m.Vents[vent]
	var stream Layer
	r := &m.Rooms[v.A]
	for layer, amount := range m.streamsFrom(v, v.A, false) {
		if amount > 0 {
			gas := r.Gas[layer].part(amount)
			stream.gain(&gas, 1)
		}
	}
	return stream
}

// Arriving is kg/s that enters room A through a vent.
func (m *Model) Arriving(vent int) float64 {
	v := &m.Vents[vent]
	amounts := m.streamsFrom(v, v.B, true)
	return amounts[Lower] + amounts[Upper]
}

// ArrivingTemp is in kelvin.
func (m *Model) ArrivingTemp(vent int) float64 {
	v := &m.Vents[vent]
	flow, heat := 0.0, 0.0
	for layer, amount := range m.streamsFrom(v, v.B, true) {
		_, temp := m.source(v.B, layer)
		flow += amount
		heat += float64(amount * temp)
	}
	if flow <= 0 {
		return m.Ambient
	}
	return heat / flow
}

// Mist is the water of a stream that shows as droplets once it has met outside
// air, kg/m³: of mixtures with one and with three parts of air, the one that
// holds more water than it can keep as vapour. Saturation by Magnus' formula,
// 611 Pa e^(17.6 t/(t+243)) (from memory, to be confirmed).
func (m *Model) Mist(stream *Layer) float64 {
	if stream.Mass <= 0 || stream.Of[Water] <= 0 {
		return 0
	}
	most := 0.0
	for _, parts := range [...]float64{1, 3} {
		temp := (stream.Temp() + float64(parts*m.Ambient)) / (1 + parts)
		vapour := stream.Fraction(Water) / (1 + parts)
		celsius := num.Min(temp-Kelvin, 100)
		holds := 611 * num.Exp(17.6*celsius/(celsius+243)) / 101325 / molesOfWater
		over := (vapour - holds) * Density / temp
		most = num.Max(most, over)
	}
	return most
}

// Free is the share of an opening that gas passes, cracks included.
func (v *Vent) Free() float64 { return v.free() }

// Rich is the heat that a kg of a layer's gas could still release, in J, and the
// share of the oxygen for it that is there.
func (r *Room) Rich(layer int) (heat, share float64) {
	gas := &r.Gas[layer]
	heat = gas.Fraction(FuelHeat)
	if heat <= 0 {
		return 0, 1
	}
	return heat, gas.Fraction(Oxygen) * OxygenHeat / heat
}

// Ripe is 0 to 1: how well the upper layer would burn inside itself if lit.
func (r *Room) Ripe() float64 { return r.ripe(Upper) }

const (
	// heldShare of the heat that the fires' gas could release: with more than this
	// held back in the plumes a fire is short of air. Air for all of it and none to
	// spare holds back a sixth (see lesser). Chosen by us.
	heldShare = 0.25

	// foulShare of the gas that flames would make in clean air: a fire that makes so
	// much less of it is short of air, though what it makes may all burn. So flames do
	// where they breathe 13.6 per cent of oxygen, 15 by mass: CFAST's lower limit.
	foulShare = 0.35

	// awayShare of the heat release: a fire that burns more than this only where
	// its gas meets air, in doorways and outside, is short of it. Chosen by us.
	awayShare = 0.15

	// richShare: a layer with less than this of the oxygen that its fuel gas needs
	// burns no more than its air lets it. Chosen by us.
	richShare = 0.8
)

// Short reports whether the building's fires burn less than they would with plenty
// of air, wherever they are held back: in the plume, by a flame that makes less gas
// or dies for want of oxygen, in a layer where fuel gas gathers, or at the openings where
// alone it burns.
func (m *Model) Short() bool { return m.heldInPlumes() || m.heldAway() || m.heldInLayers() }

func (m *Model) heldInPlumes() bool {
	made, held, unmade := 0.0, 0.0, 0.0
	for i := range m.Fires {
		f := &m.Fires[i]
		if !f.lit || f.Left() <= 0 || f.Burner && f.powerAt(m.Time) <= 0 {
			continue
		}
		power := float64(f.Gas * f.Kind.HeatMJKg * 1e6)
		if f.Burner {
			power = f.powerAt(m.Time)
		}
		made += power
		held += float64(power * num.Max(f.Starved, 1-f.Lives))
		unmade += float64(f.Unmade * f.Kind.HeatMJKg * 1e6)
	}
	return made > 0 && (held > float64(heldShare*made) || unmade > float64(foulShare*(made+unmade)))
}

func (m *Model) heldAway() bool {
	away := 0.0
	for i := range m.Vents {
		away += m.Vents[i].JetW + m.Vents[i].OutsideW
	}
	return away > float64(awayShare*m.HRR)
}

// heldInLayers: gas in the least amount that would carry a flame at the layer's
// temperature, without the oxygen for it.
func (m *Model) heldInLayers() bool {
	for i := range m.Rooms {
		heat, share := m.Rooms[i].Rich(Upper)
		burns := float64(0.5*leastFuel*cold(m.Rooms[i].now.temp[Upper])) + 4*traceHeat
		if heat > burns && share < richShare {
			return true
		}
	}
	return false
}

// FuelLeft reports whether there is solid fuel, burner gas or fuel gas to burn.
func (m *Model) FuelLeft() bool {
	for i := range m.Fires {
		f := &m.Fires[i]
		if f.Burner && f.powerAt(m.Time) > 0 || !f.Burner && f.lit && f.Left() > 0.05*f.Mass0 {
			return true
		}
	}
	for i := range m.Rooms {
		if heat, _ := m.Rooms[i].Rich(Upper); heat > 0.5*leastFuel {
			return true
		}
	}
	return false
}
