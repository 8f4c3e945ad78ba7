package validate

import (
	"math"
	"strings"

	"lintel/engine"
	"lintel/engine/handcalc"
	"lintel/engine/sim"
)

// The steady room: 2.80 × 2.80 × 2.13 m, ceramic fibre on walls and ceiling.
const (
	steadyWideM, steadyHighM = 2.80, 2.13
	steadyBoardM             = 0.0127
	steadySettleS            = 900 // the board is heated through in 320 s
)

// steadyRooms runs every test of the steady-room series through the full model.
func steadyRooms(library sim.Library, data *table) (Series, error) {
	s := Series{
		ID: "steckler_1982", Title: "steady rooms with one opening (NBSIR 82-2520)",
		Tuned: "the draught factor of the plume and the mixing of the inflow were set with the mean of these rooms in view, the two-layer flow through the opening was tested with their measured layers, the wall film was chosen with their means watched; no single row was fitted",
		Notes: []string{
			"walls, ceiling and floor all of the 12.7 mm ceramic fibre board (the floor was calcium silicate)",
			"raised burners stand 0.30 m above the floor; burners named by a wall stand at it",
			"run for 900 s, averaged over the last 60 s",
		},
	}
	for _, r := range data.all() {
		if err := steadyRoom(library, r, &s); err != nil {
			return s, err
		}
	}
	rise, plane, flow := s.points(&LayerRise), s.points(&Neutral), s.points(&Flow)
	s.line(within(rise, 0.75, 1.25) == 1, "temperature rise within 25 %, every row", share(within(rise, 0.75, 1.25), len(rise)))
	inPlane := steadyPlanes(data, plane)
	s.line(inPlane >= 0.9, "neutral plane within a tenth of the opening's height for 90 % of rows", share(inPlane, len(plane)))
	s.line(within(flow, 0.75, 1.25) == 1, "flow in and out 0.75 to 1.25 of measured, every row", share(within(flow, 0.75, 1.25), len(flow)))
	return s, nil
}

func steadyPlanes(data *table, planes []Point) float64 {
	good := 0
	for _, p := range planes {
		for _, r := range data.where("test", p.Row) {
			if math.Abs(p.Ours-p.Measured) <= 0.1*r.number("H_m") {
				good++
			}
		}
	}
	return float64(good) / float64(max(1, len(planes)))
}

// place reads where a burner stood.
func place(words string) engine.Place {
	switch {
	case strings.Contains(words, "Corner"):
		return engine.Corner
	case strings.Contains(words, "Wall"), words == "Back", words == "Side":
		return engine.Wall
	}
	return engine.Centre
}

func steadyScenario(r row) engine.Scenario {
	base := 0.0
	if strings.Contains(r.text("burner"), "raised") {
		base = 0.30
	}
	return engine.Scenario{
		Name: "steady room " + r.name, Ambient: engine.Ambient{TempC: r.number("T_amb_C")}, EndS: steadySettleS,
		Compartments: []engine.Compartment{roomOf("room", steadyWideM, steadyWideM, steadyHighM, "ceramic_fibre", steadyBoardM)},
		Openings:     []engine.Opening{slot("opening", "room", engine.Outside, r.number("sill_m"), r.number("W_m"), r.number("H_m"), 1)},
		Fuels:        []engine.Fuel{burner("room", r.number("Q_kW"), base, 0.30, place(r.text("burner")))},
	}
}

func steadyRoom(library sim.Library, r row, s *Series) error {
	p, err := start(library, steadyScenario(r))
	if err != nil {
		return err
	}
	got, err := p.mean(steadySettleS-60, steadySettleS, upper("room"), lower("room"), layer("room"), neutral("opening"), inflow("opening"), outflow("opening"))
	if err != nil {
		return err
	}
	s.FireS += steadySettleS
	ambient, sill := r.number("T_amb_C"), r.number("sill_m")
	room := handcalc.OpenRoom{
		Room:   handcalc.Room{LengthM: steadyWideM, WidthM: steadyWideM, HeightM: steadyHighM},
		Vent:   handcalc.Vent{WidthM: r.number("W_m"), HeightM: r.number("H_m")},
		Lining: handcalc.Lining{ConductivityKWMK: 0.0001, DensityKgM3: 200, HeatKJKgK: 1, ThicknessM: steadyBoardM},
		HRRKW:  r.number("Q_kW"),
	}
	rise, _ := handcalc.MQH(room, steadySettleS)
	gas := handcalc.HotGas{GasC: ambient + rise, AmbientC: ambient}
	handFlow := handcalc.Inflow(gas, 0.7) * room.Vent.Factor()
	from := len(s.Points)
	s.add(&LayerRise, r.name, r.number("T_u_C")-ambient, got[0], rise)
	s.add(&LowerRise, r.name, r.number("T_l_C")-ambient, got[1], none)
	s.add(&LayerDepth, r.name, steadyHighM-r.number("z_int_m"), steadyHighM-got[2], none)
	s.add(&Neutral, r.name, r.number("z_n_m")-sill, got[3]-sill, handcalc.NeutralPlane(gas)*r.number("H_m"))
	s.add(&Flow, r.name+" in", r.number("mdot_in_hyd"), got[4], handFlow)
	s.add(&Flow, r.name+" out", r.number("mdot_out_hyd"), got[5], handFlow)
	for i := from; i < len(s.Points); i++ {
		s.Points[i].Apart = steadyApart(r)
	}
	return nil
}

// steadyApart says why a test stays out of the statistics.
func steadyApart(r row) string {
	switch {
	case r.number("H_m") < 0.5:
		return "0.46 m window: two layers are no longer a fair picture"
	case r.name == "710" || r.name == "810":
		return "repeat day, cold"
	}
	return ""
}
