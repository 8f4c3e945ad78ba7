package sim

import (
	"math"
	"strings"

	"lintel/engine"
	"lintel/engine/truth"
	"lintel/engine/zone"
)

// The kinds of event that are no rapid fire event of the trade.
const (
	Extinction = "extinction"
	Regrowth   = "re_growth"

	// LayerIgnition: the gas of a room in which next to nothing burned lit at once,
	// and it was neither a backdraft nor a smoke explosion by what is told of those.
	LayerIgnition = "layer_ignition"

	conditions = "_conditions" // after a hazard's name: it has not happened, and could
)

// Kinds are all kinds of event; content has the words of each.
var Kinds = []string{
	string(engine.Flashover), string(engine.VentilationFlashover),
	string(engine.Backdraft), string(engine.Backdraft) + conditions,
	string(engine.SmokeExplosion), string(engine.SmokeExplosion) + conditions,
	LayerIgnition, Extinction, Regrowth, OpeningFailed,
}

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

	// burstShare of what flashes a room over: burning in its gas that comes up at
	// once and is more than this is a burst. Chosen by us.
	burstShare = 0.15

	// causeS is how soon after an opening was widened a fire must begin to rise
	// for that opening to be its cause, s in a room 2.4 m high; afterOpening is how
	// long that rise may take. Both chosen by us: houses took one to three minutes
	// from the opening to flashover (UL FSRI's ventilation studies, from memory, to
	// be confirmed), but their fires began to answer within half a minute.
	causeS       = 30.0
	afterOpening = 180.0

	// holdS is how long a room must be out of a state before it can enter it anew,
	// and how long a fire must have been down before it grows again, s in a room
	// 2.4 m high. Chosen by us: a firefighter would call less one event.
	holdS = 30.0

	// settleS is how long the fire's level is averaged over, s at the same height;
	// chosen by us, as engine/truth has it.
	settleS = truth.SettleS

	// usualHeight is that of a common room, m. Times of fire go by the square root
	// of length (Froude scaling; Quintiere, "Scaling applications in fire
	// research", 1989, from memory, to be confirmed), so a cell of 0.6 m has half.
	usualHeight = 2.4
)

// watch notes sudden events.
type watch struct {
	events  []engine.Event
	rooms   []roomWatch
	pace    float64 // the building's times over those of a room of usual height
	place   int     // of the seat
	tide    tide    // the fire's level
	peak    float64 // highest level since it last went out or grew again, kW
	trough  float64
	fell    float64 // when it fell below a part of it
	falling bool
	regrew  float64 // when it last grew again
	out     bool
	seen    float64 // when it was last looked at
	opened  float64 // when an opening was last widened; negative when never
	opening int
	short   bool // whether the fire wanted for air when it was
	failed  []bool
}

// roomWatch is what is remembered of one room.
type roomWatch struct {
	flashed   spell
	backdraft spell // its conditions
	heldAt    float64
	fired     bool // its burst was noted
	premixed  spell
	caught    bool
	blamed    float64 // time of the opening that last brought a flashover about
	wasPoor   float64 // time when it was last starved of air
	layer     float64 // kW of burning in the layer and in jets, smoothed
	burning   float64 // kW of all burning in the room, averaged as the fire's level is
	lit       spell   // its gas
}

func (w *watch) begin(m *zone.Model) {
	w.rooms = make([]roomWatch, len(m.Rooms))
	w.failed = make([]bool, max(0, len(m.Vents)-len(m.Rooms))) // the last are the rooms' cracks
	tallest := 0.0
	for i := range m.Rooms {
		tallest = math.Max(tallest, m.Rooms[i].Height)
	}
	w.pace = math.Sqrt(tallest / usualHeight)
	w.opened = math.Inf(-1)
	for i := range w.rooms {
		w.rooms[i].wasPoor, w.rooms[i].heldAt, w.rooms[i].blamed = math.Inf(-1), math.Inf(-1), math.Inf(-1)
	}
}

func (w *watch) clone() watch {
	c := *w
	c.events = append([]engine.Event(nil), w.events...)
	c.rooms = append([]roomWatch(nil), w.rooms...)
	c.failed = append([]bool(nil), w.failed...)
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

// justSaid reports whether something happened in a room, by what was told of it within
// the time of settling.
func (w *watch) justSaid(r *Run, room int, now float64) bool {
	for i := len(w.events) - 1; i >= 0 && now-w.events[i].TS < float64(w.pace*settleS); i-- {
		e := &w.events[i]
		if e.Where == r.scenario.Compartments[room].ID && !strings.HasSuffix(e.Kind, conditions) {
			return true
		}
	}
	return false
}

// look notes what is new.
func (w *watch) look(r *Run, s truth.State) {
	w.lookOpenings(r)
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
	flashes := flashoverKW(r.model, i)
	w.backdraft(r, i, s, upper, heat, flashes)
	w.premixed(r, i, s, heat, flashes)
	w.layerLights(r, i, s, flashes)
	was.layer += float64(0.1 * (room.Out.LayerW/1000 - was.layer))
	was.burning += float64((room.Out.BurnW/1000 - was.burning) * w.share(s))
}

// share is how far an average over the time of settling moves in one look.
func (w *watch) share(s truth.State) float64 {
	dt := s.TS - w.seen
	return dt / (dt + float64(w.pace*settleS))
}

// flashover: layer or floor flux pass the criteria while the room burns. It is
// ventilation-induced where the room was starved before and an opening was made;
// one opening is named for it once in a room.
func (w *watch) flashover(r *Run, i int, s truth.State, upper float64) {
	room, was := &r.model.Rooms[i], &w.rooms[i]
	flux := room.Out.FloorFlux / 1000
	enters := (upper >= truth.FlashoverC || flux >= truth.FlashoverFlux) && room.Out.BurnW >= 0.1*r.model.HRR
	keeps := upper > truth.FlashoverKeepC || flux > truth.FlashoverKeepFlux
	hold := float64(w.pace * holdS)
	if was.flashed.last < w.opened {
		hold = 0 // it was out of it when the opening was made: a new one is news
	}
	if !was.flashed.begins(enters, keeps, s.TS, hold) {
		return
	}
	state := engine.Sentence(causeLayer, degrees("t", upper), engine.Slot("flux", whole(flux)))
	if w.answers(s) && was.blamed < w.opened && (w.short || was.wasPoor > w.opened-60) {
		was.blamed = w.opened
		w.say(r, string(engine.VentilationFlashover), i, engine.Sentences(w.cause(r, s), causeShort, state))
		return
	}
	w.say(r, string(engine.Flashover), i, state)
}

// answers reports whether the fire's rise is its answer to the last opening: it
// turned up soon after, or was rising already, and has risen since.
func (w *watch) answers(s truth.State) bool {
	since := s.TS - w.opened
	return since < float64(w.pace*afterOpening) && !w.tide.falling && w.tide.troughAt < w.opened+float64(w.pace*causeS)
}

func (w *watch) cause(r *Run, s truth.State) string {
	return engine.Sentence(causeOpened, engine.Slot("s", whole(s.TS-w.opened)), r.opening(w.opening))
}
