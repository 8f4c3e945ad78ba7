package validate

import (
	"strconv"

	"lintel/engine"
	"lintel/engine/sim"
)

// threeRooms runs the fire room, corridor and target room.
func threeRooms(library sim.Library, data *table) (Series, error) {
	s := Series{
		ID: "nbs_multiroom_100kW_layers", Title: "fire room, corridor and target room, 110 kW",
		Tuned: heatLossTuned,
		Notes: []string{
			"fire room all of 50 mm ceramic fibre blanket, corridor of calcium silicate, target room of gypsum (floors were brick, gypsum and concrete); the short entries between rooms are left out",
			"burner of 0.30 m square at the back wall with its top at 0.5 m (FDS NBS_100A input; the zone-model input has it on the floor); every tree of the corridor is compared with its one upper and lower layer",
		},
	}
	for _, test := range []string{"MV100A", "MV100Z"} {
		if err := suiteTest(library, data, test, &s); err != nil {
			return s, err
		}
	}
	rise, depth := s.points(&LayerRise), s.points(&LayerDepth)
	s.further(within(rise, 0.75, 1.25) == 1, "temperature rise within 25 %, every tree and time", share(within(rise, 0.75, 1.25), len(rise)))
	s.further(near(depth, 0.25) == 1, "layer height within 0.25 m, every tree and time", share(near(depth, 0.25), len(depth)))
	return s, nil
}

const suiteAmbientC = 23

func suiteScenario(withTarget bool) engine.Scenario {
	sc := engine.Scenario{
		Name: "three rooms", Ambient: engine.Ambient{TempC: suiteAmbientC}, EndS: 900,
		Compartments: []engine.Compartment{
			roomOf("fire", 2.34, 2.34, 2.16, "ceramic_blanket", 0.05),
			roomOf("corridor", 12.19, 2.44, 2.44, "calcium_silicate", 0.0127),
		},
		Openings: []engine.Opening{
			slot("inner", "fire", "corridor", 0, 0.81, 1.60, 1),
			slot("end", "corridor", engine.Outside, 0, 0.76, 2.03, 1),
		},
		Fuels: []engine.Fuel{burner("fire", 110, 0.5, square(0.30), engine.Wall)},
	}
	if withTarget {
		sc.Compartments = append(sc.Compartments, roomOf("target", 2.22, 2.24, 2.43, "gypsum", 0.0127))
		sc.Openings = append(sc.Openings, slot("side", "corridor", "target", 0, 0.79, 2.04, 1))
	}
	return sc
}

// suiteTree is the room in which a tree stood, and its height.
func suiteTree(tree string) (room string, height float64) {
	switch tree {
	case "1":
		return "fire", 2.16
	case "7":
		return "target", 2.43
	}
	return "corridor", 2.44
}

func suiteTest(library sim.Library, data *table, test string, s *Series) error {
	p, err := start(library, suiteScenario(test == "MV100Z"))
	if err != nil {
		return err
	}
	for _, at := range []float64{60, 120, 300, 600, 895} {
		if err := p.until(at - 5); err != nil {
			return err
		}
		if _, err := p.mean(at-5, at+5); err != nil {
			return err
		}
		stamp := strconv.Itoa(int(at))
		if at == 895 {
			stamp = "900" // the burner was shut at 900 s
		}
		for _, r := range data.where("time_s", stamp) {
			if r.text("test") != test {
				continue
			}
			room, height := suiteTree(r.text("tree"))
			s.add(&LayerRise, r.name, r.number("T_upper_C")-suiteAmbientC, upper(room)(p), none)
			depth := s.add(&LayerDepth, r.name, height-r.number("z_int_m"), height-layer(room)(p), none)
			if at < 100 && room != "fire" {
				depth.Apart = "smoke front still on its way"
				s.Points[len(s.Points)-2].Apart = depth.Apart
			}
		}
	}
	s.FireS += 900
	return nil
}
