package sim

import (
	"lintel/engine"
	"lintel/engine/truth"
	"lintel/engine/zone"
)

// What the gas of a room does at once: conditions for a backdraft and the backdraft,
// conditions for a smoke explosion and the explosion, gas that lights. What flashes the
// room over as it stands, kW, is the measure of how much burns.

// bursts reports whether the burning in a room's gas has come up at once.
func (w *watch) bursts(r *Run, i int, flashes float64) bool {
	burst := r.model.Rooms[i].Out.LayerW / 1000
	return burst > 3*w.rooms[i].layer && burst > burstShare*flashes
}

// backdraft: hot gas rich in fuel and poor in oxygen, in a room that burns less than an
// incipient fire; and the burst when air reaches it. A room in which more burns is a
// starved fire, and no store of gas that waits for air.
func (w *watch) backdraft(r *Run, i int, s truth.State, upper, heat, flashes float64) {
	room, was := &r.model.Rooms[i], &w.rooms[i]
	burns := room.Out.BurnW / 1000
	rich := heat > richHeat && room.Gas[zone.Upper].OxygenMoles() < poorOxygen && upper > hotEnough && room.Flame < 0.3
	holds := rich && burns < float64(truth.IncipientShare*flashes)
	keeps := heat > 0.7*richHeat && room.Flame < 0.5 && burns < burstShare*flashes
	if was.backdraft.begins(holds, keeps, s.TS, w.pace*holdS) {
		was.fired = false
		w.say(r, string(engine.Backdraft)+conditions, i, richGas(room, heat))
	}
	if holds {
		was.heldAt = s.TS
	}
	if w.bursts(r, i, flashes) && !was.fired && s.TS-was.heldAt < 60 && s.TS-w.opened < 60 && w.opened <= s.TS {
		was.fired = true
		w.say(r, string(engine.Backdraft), i, engine.Sentences(w.cause(r, s), engine.Sentence(causeAir, kilowatts(room.Out.LayerW))))
	}
}

// richGas tells of hot gas rich in fuel, and how much still burns in a room whose gas
// no flame crosses: a fire that is starved and not out is no store of gas alone.
func richGas(room *zone.Room, heat float64) string {
	if room.Out.BurnW < 500 {
		return engine.Sentence(causeGas, gas(room, heat)...)
	}
	return engine.Sentence(causeGasBurning, append(gas(room, heat), kilowatts(room.Out.BurnW))...)
}

// premixed: gas that would burn all through if lit, without flame in it.
func (w *watch) premixed(r *Run, i int, s truth.State, heat, flashes float64) {
	room, was := &r.model.Rooms[i], &w.rooms[i]
	ripe := room.Ripe()
	enters := ripe > 0.6 && room.Flame < 0.05 && heat > 0.5*richHeat
	if was.premixed.begins(enters, ripe > 0.3, s.TS, w.pace*holdS) {
		was.caught = false
		w.say(r, string(engine.SmokeExplosion)+conditions, i, engine.Sentence(causeMixed, gas(room, heat)...))
		return
	}
	strong := room.Out.LayerW/1000 > burstShare*flashes
	if was.premixed.on && !was.caught && ripe > 0.3 && room.Flame > 0.5 && strong {
		was.caught = true
		w.say(r, string(engine.SmokeExplosion), i, engine.Sentence(causeCaught, kilowatts(room.Out.LayerW)))
	}
}

// layerLights: gas that lights at once in a room that was all but dark, unless it is
// told already as a backdraft or a smoke explosion.
func (w *watch) layerLights(r *Run, i int, s truth.State, flashes float64) {
	room, was := &r.model.Rooms[i], &w.rooms[i]
	dark := was.burning < float64(truth.IncipientShare*flashes)
	keeps := room.Out.LayerW/1000 > 0.3*burstShare*flashes
	if !was.lit.begins(dark && w.bursts(r, i, flashes), keeps, s.TS, w.pace*holdS) || was.premixed.on || w.justSaid(r, i, s.TS) {
		return
	}
	cause := gasLit(room)
	if s.TS-w.opened < float64(w.pace*causeS) {
		cause = engine.Sentences(w.cause(r, s), engine.Sentence(causeAir, kilowatts(room.Out.LayerW)))
	}
	w.say(r, LayerIgnition, i, cause)
}

func gasLit(room *zone.Room) string {
	return engine.Sentence(causeLayerLit, degrees("t", room.Gas[zone.Upper].Temp()-zone.Kelvin), kilowatts(room.Out.LayerW))
}
