package validate

import (
	"fmt"
	"math"
	"strings"

	"lintel/engine"
	"lintel/engine/sim"
)

// readyStates sets the gas of each published state behind a shut door with a
// small igniter, and then opens the door on a second one. The outcome of the experiments is not in
// the file, so only what must be true of such a state is asked.
func readyStates(library sim.Library, data *table) (Series, error) {
	s := Series{
		ID: "nist_backdraft_states", Title: "gas states before a door is opened",
		Notes: []string{
			"compartment 1.52 × 0.99 × 0.99 m, door 0.43 × 0.80 m, interface 0.3925 m (FDS input of the same tests); walls of ceramic fibre blanket, which start as warm as the gas",
			"a scenario gives fuel and oxygen of the upper layer only, of wood gas at 14 MJ/kg: fuel is scaled to the same heat; the lower layer starts as clean air though fuel and 10 to 13 % of oxygen were in it",
			"the outcome is not in the file: nothing is compared by number",
		},
	}
	rich, quiet, burns := 0, 0, 0
	var words []string
	rows := data.all()
	for _, r := range rows {
		state, err := readyState(library, r)
		if err != nil {
			return s, err
		}
		s.FireS += 60
		rich += int(side(state.told))
		quiet += int(side(state.shutKW < 5))
		burns += int(side(state.openKW > 5*math.Max(state.shutKW, 5)))
		words = append(words, fmt.Sprintf("%s %.0f to %.0f kW", r.name, state.shutKW, state.openKW))
	}
	count := func(n int) string { return fmt.Sprintf("%d of %d", n, len(rows)) }
	s.further(rich == len(rows), "every state is told as conditions for a backdraft", count(rich))
	s.further(quiet == len(rows), "behind the shut door the upper gas does not burn, igniter or not", count(quiet))
	s.further(burns == len(rows), "opened on an igniter it burns more than fivefold within 30 s", count(burns)+": "+strings.Join(words, "; "))
	return s, nil
}

// readiness is what came of one state.
type readiness struct {
	told           bool
	shutKW, openKW float64
}

// heatOf is the heat of combustion in MJ/kg (fuels.csv: methane, propane).
func heatOf(fuel string) float64 {
	if fuel == "Propane" {
		return 46.4
	}
	return 50
}

func readyState(library sim.Library, r row) (readiness, error) {
	const width, depth, height = 1.52, 0.99, 0.99
	room := roomOf("room", width, depth, height, "ceramic_blanket", 0.05)
	room.LeakM2 = some(0.0005)
	room.Initial = &engine.Initial{
		UpperC: some(r.number("T_u_C")), LowerC: some(r.number("T_l_C")), InterfaceM: some(0.3925),
		O2: some(r.number("XO2_u")), FuelGas: some(r.number("YF_u") * heatOf(r.text("fuel")) / 14),
	}
	early, late := burner("room", 0.2, 0.25, 0.05, engine.Centre), burner("room", 0.2, 0.25, 0.05, engine.Centre)
	early.ID, late.ID = "early", "late"
	late.HRRKW = [][2]float64{{22, 0.2}, {60, 0.2}} // one that died in the shut room is out
	sc := engine.Scenario{
		Name: "state " + r.name, Ambient: engine.Ambient{TempC: 20}, EndS: 60,
		Compartments: []engine.Compartment{room},
		Openings:     []engine.Opening{slot("door", "room", engine.Outside, 0, 0.43, 0.80, 0)},
		Fuels:        []engine.Fuel{early, late},
		Moves:        []engine.Move{opens("door", 20)},
	}
	var state readiness
	p, err := start(library, sc)
	if err != nil {
		return state, err
	}
	for p.TimeS() < 50 {
		got, err := p.mean(p.TimeS(), p.TimeS()+1, power)
		if err != nil {
			return state, err
		}
		if p.TimeS() <= 20 {
			state.shutKW = math.Max(state.shutKW, got[0])
		} else {
			state.openKW = math.Max(state.openKW, got[0])
		}
	}
	for _, e := range p.Events() {
		state.told = state.told || e.Kind == string(engine.Backdraft)+"_conditions"
	}
	return state, nil
}
