package sim

import (
	"math"
	"strconv"

	"lintel/engine"
	"lintel/engine/truth"
	"lintel/engine/zone"
)

// The kinds of event that are no rapid fire event of the trade, beside
// engine.Hazards and a hazard's name with "_conditions".
const (
	Extinction = "extinction"
	Regrowth   = "re_growth"
)

const (
	// richHeat and poorOxygen are backdraft conditions: gas that could release
	// 1.6 MJ/kg (13 per cent of wood gas by mass, 3 of methane) with less than 12
	// per cent of oxygen by volume. Hydrocarbons were seen to need 10 to 16 per
	// cent by mass (Fleischmann; Gottuk; from memory, to be confirmed); the leanest
	// stored state before an opening had 1.7 MJ/kg, and 5.6 to 7.8 per cent of
	// oxygen (NIST backdraft states). Chosen by us from these.
	richHeat   = 1.6e6
	poorOxygen = 0.12

	// hotEnough: pyrolysis gas lit itself above 320 to 350 °C, and a pilot lit it
	// down to about 320 °C (Wu et al., Fire Technology 2020, abstract); with a
	// live ember or flame anywhere in the room we take 120 °C (chosen by us).
	hotEnough = 120.0

	// afterOpening is how long an opening is taken for a cause, s. Chosen by us.
	afterOpening = 180.0
)

// watch notes sudden events.
type watch struct {
	events  []engine.Event
	rooms   []roomWatch
	place   int     // of the seat
	peak    float64 // highest heat release since it last went out, kW
	trough  float64
	falling bool
	out     bool
	opened  float64 // when an opening was last widened; negative when never
	opening int
	short   bool // whether the fire wanted for air when it was
}

// roomWatch is what is remembered of one room.
type roomWatch struct {
	flashed   bool
	backdraft bool // conditions held
	heldAt    float64
	fired     bool
	premixed  bool
	wasPoor   float64 // time when it was last starved of air
	layer     float64 // kW of burning in the layer and in jets, smoothed
}

func (w *watch) begin(rooms int) {
	w.rooms = make([]roomWatch, rooms)
	w.opened = math.Inf(-1)
	for i := range w.rooms {
		w.rooms[i].wasPoor, w.rooms[i].heldAt = math.Inf(-1), math.Inf(-1)
	}
}

func (w *watch) clone() watch {
	c := *w
	c.events = append([]engine.Event(nil), w.events...)
	c.rooms = append([]roomWatch(nil), w.rooms...)
	return c
}

// moved remembers an opening that was made wider.
func (w *watch) moved(r *Run, opening int, wider bool) {
	if wider {
		w.opened, w.opening = r.TimeS(), opening
		w.short = r.Regime() == engine.VentilationLimited
	}
}

// seat is the room that burns most; it keeps its place until another burns
// half as much again.
func (w *watch) seat(m *zone.Model) int {
	best := w.place
	for i := range m.Rooms {
		if m.Rooms[i].Out.BurnW > float64(1.5*m.Rooms[best].Out.BurnW)+1 {
			best = i
		}
	}
	w.place = best
	return best
}

func (w *watch) say(r *Run, kind string, room int, cause string) {
	w.events = append(w.events, engine.Event{
		TS: math.Round(r.TimeS()*100) / 100, Kind: kind, Where: r.scenario.Compartments[room].ID, Cause: cause,
	})
}

// look notes what is new.
func (w *watch) look(r *Run, s truth.State) {
	for i := range w.rooms {
		w.lookRoom(r, i, s)
	}
	w.lookFire(r, s)
}

func (w *watch) lookRoom(r *Run, i int, s truth.State) {
	room, was := &r.model.Rooms[i], &w.rooms[i]
	upper := room.Gas[zone.Upper].Temp() - zone.Kelvin
	heat, air := room.Rich(zone.Upper)
	if air < 0.8 && heat > 0.25*richHeat {
		was.wasPoor = s.TS
	}
	w.flashover(r, i, s, upper)
	w.backdraft(r, i, s, upper, heat)
	w.premixed(r, i, upper, heat)
}

// flashover: layer or floor flux pass the criteria while the room burns. It is
// ventilation-induced where the room was starved before and an opening was made.
func (w *watch) flashover(r *Run, i int, s truth.State, upper float64) {
	room, was := &r.model.Rooms[i], &w.rooms[i]
	flux := room.Out.FloorFlux / 1000
	if was.flashed {
		was.flashed = upper > truth.FlashoverKeepC || flux > truth.FlashoverKeepFlux
		return
	}
	if upper < truth.FlashoverC && flux < truth.FlashoverFlux || room.Out.BurnW < 0.1*r.model.HRR {
		return
	}
	was.flashed = true
	state := "upper layer " + whole(upper) + " C, " + whole(flux) + " kW/m2 at the floor"
	if s.TS-w.opened < afterOpening && (w.short || was.wasPoor > w.opened-60) {
		w.say(r, string(engine.VentilationFlashover), i, w.cause(r, s)+"; the fire had been short of air; "+state)
		return
	}
	w.say(r, string(engine.Flashover), i, state)
}

func (w *watch) cause(r *Run, s truth.State) string {
	id := r.scenario.Openings[w.opening].ID
	return id + " opened " + whole(s.TS-w.opened) + " s before"
}

// backdraft: hot gas rich in fuel and poor in oxygen; and the burst when air
// reaches it.
func (w *watch) backdraft(r *Run, i int, s truth.State, upper, heat float64) {
	room, was := &r.model.Rooms[i], &w.rooms[i]
	oxygen := room.Gas[zone.Upper].OxygenMoles()
	holds := heat > richHeat && oxygen < poorOxygen && upper > hotEnough && room.Flame < 0.3
	if holds {
		if !was.backdraft {
			w.say(r, string(engine.Backdraft)+"_conditions", i,
				"hot gas, "+whole(upper)+" C, rich in fuel ("+tenth(heat/1e6)+" MJ/kg), "+tenth(100*oxygen)+" % oxygen, no flame")
		}
		was.fired = was.fired && was.backdraft
		was.heldAt = s.TS
	}
	was.backdraft = holds || was.backdraft && heat > 0.7*richHeat && room.Flame < 0.5
	burst := room.Out.LayerW / 1000
	quick := burst > 3*was.layer && burst > 0.15*flashoverKW(r.model, i)
	if quick && !was.fired && s.TS-was.heldAt < 60 && s.TS-w.opened < 60 && w.opened <= s.TS {
		was.fired = true
		w.say(r, string(engine.Backdraft), i, w.cause(r, s)+"; air reached fuel-rich gas, "+whole(burst)+" kW burning in it at once")
	}
	was.layer += float64(0.1 * (burst - was.layer))
}

// premixed: gas that would burn all through if lit, without flame in it.
func (w *watch) premixed(r *Run, i int, upper, heat float64) {
	room, was := &r.model.Rooms[i], &w.rooms[i]
	ripe := room.Ripe()
	if was.premixed {
		if room.Flame > 0.5 && ripe > 0.3 && room.Out.LayerW/1000 > 0.15*flashoverKW(r.model, i) {
			was.premixed = false
			w.say(r, string(engine.SmokeExplosion), i, "a mixture of smoke gas and air caught, "+whole(room.Out.LayerW/1000)+" kW at once")
			return
		}
		was.premixed = ripe > 0.3
		return
	}
	if ripe > 0.6 && room.Flame < 0.05 && heat > 0.5*richHeat {
		was.premixed = true
		w.say(r, string(engine.SmokeExplosion)+"_conditions", i,
			"smoke gas and air mixed ready to burn: "+tenth(heat/1e6)+" MJ/kg, "+tenth(100*room.Gas[zone.Upper].OxygenMoles())+" % oxygen, "+whole(upper)+" C, no flame in it")
	}
}

// lookFire: the fire as a whole going out and growing again.
func (w *watch) lookFire(r *Run, s truth.State) {
	least := float64(0.005 * s.FlashoverKW)
	if w.out || w.falling {
		w.trough = math.Min(w.trough, s.HRRKW)
	}
	switch {
	case w.out && s.HRRKW > 4*least || w.falling && s.HRRKW > float64(3*w.trough)+least && s.HRRKW > 0.3*w.peak:
		cause := "from " + whole(w.trough) + " to " + whole(s.HRRKW) + " kW"
		if s.TS-w.opened < afterOpening {
			cause = w.cause(r, s) + "; " + cause
		}
		w.say(r, Regrowth, w.place, cause)
		w.out, w.falling, w.peak = false, false, s.HRRKW
	case !w.out && w.peak > 4*least && s.HRRKW < 0.5*least && s.HRRKW < 0.02*w.peak:
		w.out, w.trough = true, s.HRRKW
		w.say(r, Extinction, w.place, w.why(r, s))
	case !w.falling && s.HRRKW < 0.4*w.peak && w.peak > 4*least:
		w.falling, w.trough = true, s.HRRKW
	}
	w.peak = math.Max(w.peak, s.HRRKW)
}

func (w *watch) why(r *Run, s truth.State) string {
	lower := r.model.Rooms[w.place].Gas[zone.Lower].OxygenMoles()
	switch {
	case s.WaterL > 0 && lower > 0.15:
		return "water, " + whole(s.WaterL) + " l so far"
	case s.OxygenLimited || lower < 0.15:
		return "oxygen down to " + tenth(100*lower) + " % in the lower layer"
	}
	return "the fuel is used up"
}

func whole(x float64) string { return strconv.FormatFloat(x, 'f', 0, 64) }
func tenth(x float64) string { return strconv.FormatFloat(x, 'f', 1, 64) }
