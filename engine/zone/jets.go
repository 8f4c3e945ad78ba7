package zone

import (
	"lintel/engine/internal/num"
)

// jet is a stream entering a room and what it draws in, with the oxygen in each
// and the oxygen that the fuel in each would need, kg/s. Heat is in K kg/s.
type jet struct {
	flow, heat            float64
	oxygen, want          float64
	moles                 float64 // oxygen of the stream
	drawn, drawnHeat      float64
	drawnOxygen, drawnAsk float64
	drawnMoles            float64
}

// burnJets burns, in the shear of every opening, the fuel of one side with the
// oxygen of the other: flame in a doorway, at a hole, and the fire that moves to
// the air. The streams are those of the last step, so that the heat is known
// before the pressures are.
func (m *Model) burnJets(dt float64) {
	for i := range m.Vents {
		v := &m.Vents[i]
		v.JetW = 0
		m.burnInto(v, 0, v.A, v.B, dt)
		if v.B != OutsideRoom {
			m.burnInto(v, 1, v.B, v.A, dt)
		} else {
			m.burnOutside(v, dt)
		}
	}
}

// streams is the flow out of side from (0 is A), by layer, kg/s.
func (v *Vent) streams(fromB bool, plug, sink float64) [2]float64 {
	if !v.Horizontal {
		if fromB {
			return v.Flow.In
		}
		return v.Flow.Out
	}
	up := fromB != v.AboveIsB // the stream rises when it leaves the lower room
	if up {
		return [2]float64{Lower: v.Exchange.Up * (1 - plug), Upper: v.Exchange.Up * plug}
	}
	return [2]float64{Lower: v.Exchange.Down * sink, Upper: v.Exchange.Down * (1 - sink)}
}

// streamsFrom is streams with the thin-layer shares of the room it leaves.
func (m *Model) streamsFrom(v *Vent, from int, fromB bool) [2]float64 {
	if from == OutsideRoom {
		return v.streams(fromB, 1, 1)
	}
	r := &m.Rooms[from]
	return v.streams(fromB, r.now.plug, r.now.sink)
}

// source is the gas that a stream is made of and its temperature.
func (m *Model) source(from, layer int) (gas *Layer, temp float64) {
	if from == OutsideRoom {
		return &m.air, m.airTemp
	}
	r := &m.Rooms[from]
	return &r.Gas[layer], r.next.temp[layer]
}

// burnInto burns in the jet that enters room into from room from.
func (m *Model) burnInto(v *Vent, side, into, from int, dt float64) {
	mixed := v.Mixed[side]
	if mixed.Amount <= 1e-7 {
		return
	}
	r := &m.Rooms[into]
	if r.now.barren && (from == OutsideRoom || m.Rooms[from].now.barren) {
		return
	}
	j := m.gather(v, r, mixed, from, 1-side)
	extra := num.Min(j.oxygen+j.drawnOxygen, j.want+j.drawnAsk)
	extra -= num.Min(j.oxygen, j.want) + num.Min(j.drawnOxygen, j.drawnAsk)
	if extra <= 0 {
		return
	}
	temp := (j.heat + j.drawnHeat) / (j.flow + j.drawn)
	richHeat := j.want * OxygenHeat / j.flow
	leanMoles := j.drawnMoles
	deposit := Lower
	if mixed.Up > 0.5 {
		deposit = Upper
	}
	fuelFrom, oxygenFrom := deposit, mixed.From
	hot := j.heat / j.flow
	if j.oxygen*j.drawnAsk > j.want*j.drawnOxygen { // the stream brings the air
		richHeat = j.drawnAsk * OxygenHeat / j.drawn
		leanMoles = j.moles
		fuelFrom, oxygenFrom = mixed.From, deposit
		hot = r.now.temp[mixed.From]
	}
	ready := breathes(leanMoles, temp) * feeds(richHeat, num.Max(temp, hot))
	neighbour := 0.0
	if from != OutsideRoom {
		neighbour = m.Rooms[from].Flame
	}
	r.jetReady = num.Max(r.jetReady, ready*num.Smooth(float64(extra*OxygenHeat), 0, float64(3e3*r.Area)))
	r.jetSeed = num.Max(r.jetSeed, num.Max(0.5*neighbour, lights(hot)))
	burn := jetShare * extra * ready * num.Max(r.Flame, lights(hot))
	burn = num.Min(burn, r.burnable(oxygenFrom, fuelFrom))
	if burn <= 0 {
		return
	}
	starved := num.Smooth((j.want+j.drawnAsk)/floor(j.oxygen+j.drawnOxygen, 1e-12), 0.7, 2)
	watts := m.burnt(r, fuelFrom, oxygenFrom, burn, starved, dt)
	v.JetW += watts
	r.Out.LayerW += watts
}

// jetShare is how much of what meets in a jet burns there; the rest is mixed
// into the layer. Chosen by us.
const jetShare = 0.8

// barren reports whether a room holds too little fuel gas to burn anywhere.
func (r *Room) barren() bool {
	for layer := range r.Gas {
		if r.Gas[layer].Of[FuelHeat] > float64(traceHeat*r.Gas[layer].Mass) {
			return false
		}
	}
	return true
}

// traceHeat is the heat of the fuel in a kg of gas below which nothing burns at
// any temperature: the foot of feeds, J.
const traceHeat = 2e4

// gather collects a stream and what it draws in.
func (m *Model) gather(v *Vent, r *Room, mixed Mixing, from, side int) jet {
	var j jet
	for layer, amount := range v.stream[side] {
		if amount <= 0 {
			continue
		}
		gas, temp := m.source(from, layer)
		j.flow += amount
		j.heat += float64(amount * temp)
		j.oxygen += float64(amount * gas.Fraction(Oxygen))
		j.want += float64(amount*gas.Fraction(FuelHeat)) / OxygenHeat
	}
	j.flow = floor(j.flow, 1e-9)
	j.moles = molesOfOxygen * j.oxygen / j.flow
	gas := &r.Gas[mixed.From]
	j.drawn = mixed.Amount
	j.drawnHeat = float64(mixed.Amount * r.now.temp[mixed.From])
	j.drawnOxygen = mixed.Amount * gas.Fraction(Oxygen)
	j.drawnAsk = mixed.Amount * gas.Fraction(FuelHeat) / OxygenHeat
	j.drawnMoles = r.now.oxygen[mixed.From]
	return j
}

const (
	// outsideS: how fast flame outside an opening grows and dies. Chosen by us.
	outsideS = 0.8

	// quenched is the power below which a flame at a crack or gap dies of cold
	// walls, W. Chosen by us.
	quenched = 300.0

	// lightsOutside is the temperature above which fuel-rich gas burns as it
	// meets the open air without another flame: pyrolysis gas in backdraft tests
	// lit itself above 320 to 350 °C (Wu et al., Fire Technology 2020, abstract).
	lightsOutside = 623.0
)

// burnOutside burns what leaves to the open air, where there is air enough.
func (m *Model) burnOutside(v *Vent, dt float64) {
	v.OutsideW = 0
	r := &m.Rooms[v.A]
	if v.Outside == 0 && r.now.barren {
		return
	}
	var flow, heat, power float64
	for layer, amount := range v.stream[0] {
		gas := &r.Gas[layer]
		flow += amount
		heat += float64(amount * r.now.temp[layer])
		power += float64(amount * gas.Fraction(FuelHeat))
	}
	ready, seed := 0.0, 0.0
	if flow > 1e-7 {
		temp := heat / flow
		ready = feeds(power/flow, temp) * num.Smooth(power, quenched, 5*quenched)
		seed = num.Max(r.Flame*num.Smooth(temp, 450, 650), num.Smooth(temp, lightsOutside, lightsOutside+150))
	}
	grow := float64(num.Max(0, v.Outside-deadFlame)*(1-v.Outside)*ready) + float64(0.5*seed*ready*(1-v.Outside))
	die := float64(v.Outside * (1 - ready))
	v.Outside = num.Clamp(v.Outside+float64(dt*(grow-die))/outsideS, 0, 1)
	v.OutsideW = v.Outside * power
}
