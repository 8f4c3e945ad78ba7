package zone

import (
	"math"

	"lintel/engine/internal/num"
)

const (
	// doorMixing: m = C (T_l/T_s)^(2/3) (gρ²/(cT))^(1/3) H^(1/3) w^(2/3) z, what a
	// hot stream from a doorway draws in as it rises a height z to the layer; C
	// 0.44 to 0.66 (Poreh 1998, in CFAST Tech. Ref.).
	doorMixing = 0.44

	// shearMixing is the share of a cold inflow that drags hot gas down with it
	// along the interface, and fallShare how much of a plume's entrainment a cold
	// stream has that falls through the hot layer along the wall under the
	// opening. Both fitted by us to the mean lower-layer temperature of the
	// published room states.
	shearMixing = 0.05
	fallShare   = 0.5
)

// carry moves the gas that the vents pass: each stream leaves its layers, joins
// the layers it belongs to and draws gas along.
func (m *Model) carry(dt float64) {
	m.breathed = 0
	weight := memory(dt)
	for i := range m.Rooms {
		now := &m.Rooms[i].now
		now.inflow, now.squares, now.freshFlow = 0, 0, 0
		m.letOut(&m.Rooms[i])
	}
	for i := range m.Vents {
		v := &m.Vents[i]
		m.remember(v, weight)
		m.pass(v, 0, v.A, v.B, weight)
		m.pass(v, 1, v.B, v.A, weight)
	}
	if m.breathed > 0 {
		m.Books.In.add(&m.air, m.breathed*dt)
	}
	for i := range m.Rooms {
		r := &m.Rooms[i]
		r.inflow += float64(weight * (r.now.inflow - r.inflow))
		r.draught += float64(weight * (math.Sqrt(r.now.squares) - r.draught))
		if r.now.inflow > 0 {
			r.fresh += float64(weight * (r.now.freshFlow/r.now.inflow - r.fresh))
		}
	}
}

// memoryS is how far back the streams are averaged that fires and jets burn
// with. They act on the next step, and without it heat and inflow would chase
// each other from step to step. Chosen by us.
const memoryS = 0.4

// memory is the weight of this step in such an average.
func memory(dt float64) float64 { return dt / (memoryS + dt) }

// remember averages the streams of a vent; what they draw in follows as they
// join their rooms.
func (m *Model) remember(v *Vent, weight float64) {
	if v.Horizontal {
		v.passing = [2][2]float64{m.streamsFrom(v, v.A, false), m.streamsFrom(v, v.B, true)}
	} else {
		v.passing = [2][2]float64{v.Flow.Out, v.Flow.In}
	}
	for side := range v.stream {
		before, now := &v.stream[side], &v.passing[side]
		before[Lower] += float64(weight * (now[Lower] - before[Lower]))
		before[Upper] += float64(weight * (now[Upper] - before[Upper]))
		v.Mixed[side].Amount *= 1 - weight
	}
}

// letOut is the relief flow of a room at its pressure cap.
func (m *Model) letOut(r *Room) {
	switch {
	case r.Out.Relief > 0:
		amount := num.Min(r.Out.Relief*r.now.column.Density[Upper], r.budget(Upper))
		r.spend(Upper, amount)
		r.now.drawn[Upper] += amount
		r.now.vented[Upper] += amount
	case r.Out.Relief < 0:
		amount := float64(-r.Out.Relief * m.density)
		r.rate[Lower].add(&m.air, amount)
		m.breathed += amount
	}
}

// stream is gas on its way from one room to another: the layers it is drawn
// from, and what its way depends on.
type stream struct {
	of                 [2]*Layer
	share              [2]float64 // of what is in the layer, a second
	mass, heat, oxygen float64    // heat in K kg/s
}

func (s *stream) draw(gas *Layer, layer int, amount, temp float64) {
	share := amount / gas.Mass
	s.of[layer], s.share[layer] = gas, share
	s.mass += amount
	s.heat += float64(amount * temp)
	s.oxygen += float64(share * gas.Of[Oxygen])
}

// pour adds a part of the stream to an account.
func (s *stream) pour(to *Layer, part float64) {
	for layer, share := range s.share {
		if share > 0 {
			to.gain(s.of[layer], part*share)
		}
	}
}

func (s *stream) temp() float64 { return s.heat / s.mass }

// pass carries the stream out of a side of a vent (0 is A) to the other.
func (m *Model) pass(v *Vent, side, from, to int, weight float64) {
	amounts := &v.passing[side]
	flow := amounts[Lower] + amounts[Upper]
	if flow <= 0 {
		return
	}
	var s stream
	if from == OutsideRoom {
		s.draw(&m.air, Lower, flow, m.Ambient)
		m.breathed += flow
	} else {
		r := &m.Rooms[from]
		r.limit(amounts)
		for layer, amount := range amounts {
			if amount == 0 {
				continue
			}
			r.now.drawn[layer] += amount
			if to == OutsideRoom {
				r.now.vented[layer] += amount
				continue
			}
			s.draw(&r.Gas[layer], layer, amount, r.now.temp[layer])
		}
	}
	if to != OutsideRoom && s.mass > 0 {
		m.join(v, &m.Rooms[to], &s, side == 1, weight)
	}
}

// limit cuts a stream back to what a room's layers can give.
func (r *Room) limit(amounts *[2]float64) {
	if amounts[Lower] <= r.budget(Lower) && amounts[Upper] <= r.budget(Upper) {
		r.spend(Lower, amounts[Lower])
		r.spend(Upper, amounts[Upper])
		return
	}
	*amounts = r.take(*amounts)
}

// take is what a stream gets from a room's layers; a layer that runs short is
// helped out by the other, volume for volume, so that the room stays full.
func (r *Room) take(amounts [2]float64) (taken [2]float64) {
	for layer, amount := range amounts {
		own := num.Min(amount, r.budget(layer))
		r.spend(layer, own)
		taken[layer] += own
		if own == amount {
			continue
		}
		rest := float64((amount - own) * (r.now.temp[layer] / r.now.temp[1-layer]))
		rest = num.Min(rest, r.budget(1-layer))
		r.spend(1-layer, rest)
		taken[1-layer] += rest
	}
	return taken
}

// join puts a stream into a room: hot gas rises to the upper layer, cold gas
// sinks to the lower, and either draws in gas on its way.
func (m *Model) join(v *Vent, r *Room, s *stream, fromB bool, weight float64) {
	temp := s.temp()
	up := r.rises(temp)
	if !v.Horizontal && (v.Crack || v.free() < thinShare) {
		up = v.high(fromB) / floor(s.mass, 1e-12)
	}
	if up > 0 {
		s.pour(&r.rate[Upper], up)
	}
	if up < 1 {
		s.pour(&r.rate[Lower], 1-up)
	}
	var rising, falling float64
	if v.Horizontal {
		rising, falling = m.throughHole(v, r, s.mass, temp, up, fromB)
	} else {
		rising, falling = m.throughDoor(v, r, s.mass, temp, up, fromB)
		r.inhale(s, 1-up)
	}
	r.move(Lower, rising)
	r.move(Upper, falling)
	side := 1
	if fromB {
		side = 0
	}
	mixed, amount := &v.Mixed[side], rising
	mixed.From, mixed.Up = Lower, up
	if falling > rising {
		mixed.From, amount = Upper, falling
	}
	mixed.Amount += float64(weight * amount)
}

// rises is the share of gas of a temperature that goes to the upper layer.
func (r *Room) rises(temp float64) float64 {
	low, high := r.now.temp[Lower], r.now.temp[Upper]
	return num.Smooth(temp, low+0.5, low+4+float64(0.2*num.Max(0, high-low)))
}

// inhale remembers what came in low, for the draught over the fire and the air
// that its flame meets. Streams from several sides do not blow one way past a fire:
// their speeds add as vectors, and of directions that are not known the mean square
// of the sum is the sum of the squares. One stream counts whole, as in the rooms
// with one opening by which the draught was fitted.
func (r *Room) inhale(s *stream, down float64) {
	volume := float64(down * s.heat / Density)
	r.now.inflow += volume
	r.now.squares += float64(volume * volume)
	r.now.freshFlow += float64(volume * molesOfOxygen * s.oxygen / s.mass)
}

// throughDoor is what a stream through a vertical opening draws up from the
// lower layer and down from the upper, kg/s.
func (m *Model) throughDoor(v *Vent, r *Room, flow, temp, up float64, fromB bool) (rising, falling float64) {
	now := &r.now
	neutral := v.Flow.Neutral
	if math.IsNaN(neutral) {
		neutral = v.Slot.Sill
	}
	width := v.Slot.Width * v.free()
	if height := now.column.Interface - neutral; up > 0 && height > 0 {
		power := num.Max(0, float64(up*flow*HeatCap)*(temp-now.temp[Lower]))
		ratio := now.temp[Lower] / temp
		cube := float64(ratio*ratio) * ambientLift(now.temp[Lower]) * power * float64(width*width)
		rising = atMost(3*flow, doorMixing*height, cube)
	}
	down := (1 - up) * flow
	gap := now.temp[Upper] - temp
	if down <= 0 || gap <= 1 {
		return rising, 0
	}
	layered := num.Smooth(now.temp[Upper]-now.temp[Lower], 1, 10)
	falling = float64(shearMixing * down * layered)
	high := v.high(fromB) * (1 - up)
	if high > 0 {
		// The stream starts halfway between the interface and the top of its band.
		fall := float64(0.5 * (v.highest(fromB) - now.column.Interface))
		power := float64(high * HeatCap * gap)
		most := (float64(1.5*down) - falling) / fallShare
		falling += float64(layered * fallShare * risen(high, power, fall, now.temp[Upper], most))
	}
	return rising, num.Min(falling, 1.5*down)
}

// atMost is factor times the cube root of a number, or most where that is less.
func atMost(most, factor, cube float64) float64 {
	if float64(factor*factor)*factor*cube >= float64(most*most)*most {
		return most
	}
	return float64(factor * num.Cbrt(cube))
}

// thinShare is the open share below which a stream is so thin that it mixes with
// the layer it enters, hot or cold, before it rises or falls. Chosen by us.
const thinShare = 0.03

// high is the part of a stream that enters above the interface, kg/s.
func (v *Vent) high(fromB bool) float64 {
	if fromB {
		return v.Flow.HighIn
	}
	return v.Flow.HighOut
}

// highest is the top of the band through which a stream enters.
func (v *Vent) highest(fromB bool) float64 {
	if fromB && !math.IsNaN(v.Flow.Neutral) && v.Flow.TopOver > 0 {
		return v.Flow.Neutral
	}
	return v.Slot.Head
}

// throughHole is the same for a hole in the floor or ceiling of the room.
func (m *Model) throughHole(v *Vent, r *Room, flow, temp, up float64, fromB bool) (rising, falling float64) {
	now := &r.now
	fromBelow := fromB != v.AboveIsB
	if fromBelow {
		height := now.column.Interface - r.Floor
		power := float64(up*flow*HeatCap) * (temp - now.temp[Lower])
		return risen(up*flow, power, height, now.temp[Lower], 5*flow), 0
	}
	depth := r.Floor + r.Height - now.column.Interface
	power := float64((1-up)*flow*HeatCap) * (now.temp[Upper] - temp)
	drawn := risen((1-up)*flow, power, depth, now.temp[Upper], 5*flow)
	// What it draws goes down with it only as far as the mixture is still as cold as
	// the lower layer; else it is given back to the upper one on the way.
	mixed := (float64(flow*temp) + float64(drawn*now.temp[Upper])) / (flow + drawn)
	return 0, float64(drawn * (1 - r.rises(mixed)))
}
