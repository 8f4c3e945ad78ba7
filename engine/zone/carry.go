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
	shearMixing = 0.08
	fallShare   = 0.5
)

// carry moves the gas that the vents pass: each stream leaves its layers, joins
// the layers it belongs to and draws gas along.
func (m *Model) carry(dt float64) {
	for i := range m.Rooms {
		m.Rooms[i].now.draughtNow, m.Rooms[i].now.freshFlow = 0, 0
		m.letOut(&m.Rooms[i], dt)
	}
	for i := range m.Vents {
		v := &m.Vents[i]
		m.remember(v, dt)
		m.pass(v, v.A, v.B, false, v.passing[0], dt)
		m.pass(v, v.B, v.A, true, v.passing[1], dt)
	}
	for i := range m.Rooms {
		r := &m.Rooms[i]
		r.draught += float64(memory(dt) * (r.now.draughtNow - r.draught))
		if r.now.draughtNow > 0 {
			r.fresh += float64(memory(dt) * (r.now.freshFlow/r.now.draughtNow - r.fresh))
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
func (m *Model) remember(v *Vent, dt float64) {
	weight := memory(dt)
	for side, from := range [2]int{v.A, v.B} {
		v.passing[side] = m.streamsFrom(v, from, side == 1)
		now := &v.passing[side]
		for layer := range now {
			v.stream[side][layer] += float64(weight * (now[layer] - v.stream[side][layer]))
		}
	}
	v.Mixed[0].Amount *= 1 - weight
	v.Mixed[1].Amount *= 1 - weight
}

// letOut is the relief flow of a room at its pressure cap.
func (m *Model) letOut(r *Room, dt float64) {
	switch {
	case r.Out.Relief > 0:
		amount := min(r.Out.Relief*r.now.column.Density[Upper], r.budget(Upper))
		r.spend(Upper, amount)
		stream := r.Gas[Upper].part(amount)
		sum(&r.rate[Upper], &stream, -1)
		m.Books.Out.after(&stream, dt)
	case r.Out.Relief < 0:
		stream := m.air.part(-r.Out.Relief * m.density)
		sum(&r.rate[Lower], &stream, 1)
		m.Books.In.after(&stream, dt)
	}
}

// pass carries the stream from one side of a vent to the other.
func (m *Model) pass(v *Vent, from, to int, fromB bool, amounts [2]float64, dt float64) {
	flow := amounts[Lower] + amounts[Upper]
	if flow <= 0 {
		return
	}
	var stream Layer
	if from == OutsideRoom {
		stream = m.air.part(flow)
		m.Books.In.after(&stream, dt)
	} else {
		m.Rooms[from].take(&stream, amounts)
	}
	if stream.Mass <= 0 {
		return
	}
	if to == OutsideRoom {
		m.Books.Out.after(&stream, dt)
		return
	}
	m.join(v, &m.Rooms[to], &stream, fromB, dt)
}

// take draws a stream from a room's layers; a layer that runs short is helped
// out by the other, volume for volume, so that the room stays full.
func (r *Room) take(stream *Layer, amounts [2]float64) {
	for layer, amount := range amounts {
		own := min(amount, r.budget(layer))
		r.spend(layer, own)
		r.draw(stream, layer, own)
		rest := float64((amount - own) * (r.now.temp[layer] / r.now.temp[1-layer]))
		if rest = min(rest, r.budget(1-layer)); rest > 0 {
			r.spend(1-layer, rest)
			r.draw(stream, 1-layer, rest)
		}
	}
}

func (r *Room) draw(stream *Layer, layer int, amount float64) {
	if amount <= 0 {
		return
	}
	shift(&r.rate[layer], stream, &r.Gas[layer], amount)
}

// join puts a stream into a room: hot gas rises to the upper layer, cold gas
// sinks to the lower, and either draws in gas on its way.
func (m *Model) join(v *Vent, r *Room, stream *Layer, fromB bool, dt float64) {
	temp := stream.Temp()
	low, high := r.now.temp[Lower], r.now.temp[Upper]
	up := num.Smooth(temp, low+0.5, low+4+float64(0.2*max(0, high-low)))
	if !v.Horizontal && (v.Crack || v.free() < thinShare) {
		up = v.high(fromB) / floor(stream.Mass, 1e-12)
	}
	if up > 0 {
		sum(&r.rate[Upper], stream, up)
	}
	if up < 1 {
		sum(&r.rate[Lower], stream, 1-up)
	}
	var rising, falling float64
	if v.Horizontal {
		rising, falling = m.throughHole(v, r, stream.Mass, temp, up, fromB)
	} else {
		rising, falling = m.throughDoor(v, r, stream.Mass, temp, up, fromB)
		r.inhale(stream, 1-up)
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
	mixed.Amount += float64(memory(dt) * amount)
}

// inhale remembers what came in low, for the draught over the fire and the air
// that its flame meets.
func (r *Room) inhale(stream *Layer, down float64) {
	volume := float64(down * stream.Volume())
	r.now.draughtNow += volume
	r.now.freshFlow += float64(volume * stream.OxygenMoles())
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
		power := max(0, float64(up*flow*HeatCap)*(temp-now.temp[Lower]))
		ratio := now.temp[Lower] / temp
		rising = doorMixing * num.Cbrt(ratio*ratio) * num.Cbrt(ambientLift(now.temp[Lower])*power) * num.Cbrt(width*width) * height
		rising = min(rising, 3*flow)
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
		falling += float64(layered * fallShare * risen(high, power, fall, now.temp[Upper]))
	}
	return rising, min(falling, 1.5*down)
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
		return min(risen(up*flow, power, height, now.temp[Lower]), 5*flow), 0
	}
	depth := r.Floor + r.Height - now.column.Interface
	power := float64((1-up)*flow*HeatCap) * (now.temp[Upper] - temp)
	return 0, min(risen((1-up)*flow, power, depth, now.temp[Upper]), 5*flow)
}
