package validate

import (
	"lintel/engine"
	"lintel/engine/sim"
)

// twoStoreyHouse is the two-storey house with its seventeen spaces joined to
// twelve: laundry and its hall with the kitchen, den with the living room, lower
// foyer with the foot of the stairs, closet with the main bedroom.
func twoStoreyHouse(test string) houseTest {
	sc := engine.Scenario{
		Name: "two-storey house test " + test, EndS: 1600,
		Compartments: []engine.Compartment{
			houseRoom("kitchen", 6.04, 6.49, 2.5), houseRoom("dining", 3.92, 5.13, 2.5),
			houseRoom("passage", 4.37, 1.65, 2.5), houseRoom("foyer", 1.83, 3.48, 5.2),
			houseRoom("stairs", 2.54, 3.48, 5.2), houseRoom("living", 6.79, 5.00, 2.5),
			houseRoom("family", 5.80, 4.85, 5.2),
			upstairs("master", 5.89, 7.90), upstairs("hall", 7.04, 1.67), upstairs("bedroom2", 3.02, 4.57),
			upstairs("bedroom3", 3.77, 3.02), upstairs("bedroom4", 3.03, 3.33),
		},
		Openings: []engine.Opening{
			slot("front_door", "foyer", engine.Outside, 0, 0.88, 2.05, 0),
			slot("window_kitchen", "kitchen", engine.Outside, 1.22, 0.85, 0.85, 0),
			slot("window3", "bedroom3", engine.Outside, 0.61, 1.77, 1.46, 0),
			slot("window4", "bedroom4", engine.Outside, 0.61, 1.77, 1.46, 0),
			slot("dining_foyer", "dining", "foyer", 0, 2.13, 2.5, 1), slot("dining_passage", "dining", "passage", 0, 1.00, 2.5, 1),
			slot("kitchen_dining", "kitchen", "dining", 0, 1.04, 2.5, 1), slot("kitchen_family", "kitchen", "family", 0, 2.00, 2.5, 1),
			slot("passage_foyer", "passage", "foyer", 0, 1.83, 2.5, 1), slot("passage_stairs", "passage", "stairs", 0, 1.04, 2.5, 1),
			slot("passage_living", "passage", "living", 0, 4.37, 2.5, 1), slot("den_door", "family", "living", 0, 0.80, 2.05, 1),
			slot("stairs_hall", "stairs", "hall", 2.5, 1.04, 2.7, 1), slot("gallery", "family", "hall", 3.45, 5.29, 1.26, 1),
			slot("door_master", "master", "hall", 0, 0.75, 2.05, 1), slot("door2", "bedroom2", "hall", 0, 0.80, 2.05, 1),
			slot("door3", "bedroom3", "hall", 0, 0.76, 2.05, 1), slot("door4", "bedroom4", "hall", 0, 0.75, 2.05, 1),
		},
		Fuels: []engine.Fuel{shutAt(burner("family", 500, 0.6, square(0.6), engine.Wall), 1500)},
	}
	if test == "1" {
		sc.Moves = []engine.Move{opens("front_door", 600), opens("window3", 900), opens("window4", 1200)}
	} else {
		sc.Moves = []engine.Move{opens("window3", 600), opens("window_kitchen", 900), opens("front_door", 1200)}
	}
	leaks(&sc, 0.18)
	if test == "1" {
		standing(&sc, 13.5, throughout(18.8))
	} else {
		standing(&sc, 18.0, stillWarm)
	}
	return houseTest{scenario: sc, everyS: twoStoreyEveryS}
}

// twoStoreyEveryS lies between the samples of the published file.
const twoStoreyEveryS = 13.8

// stillWarm is test 6 before ignition: an hour earlier another test had ended.
func stillWarm(room string) float64 {
	warm := map[string]float64{
		"kitchen": 25.4, "dining": 26.9, "passage": 27.8, "foyer": 31.1, "stairs": 31.1, "living": 26.3,
		"family": 33.9, "master": 35.4, "hall": 36.7, "bedroom2": 34.9, "bedroom3": 34.2, "bedroom4": 34.9,
	}
	return warm[room]
}

func upstairs(id string, width, depth float64) engine.Compartment {
	room := houseRoom(id, width, depth, 2.7)
	room.FloorM = 2.5
	return room
}

var twoStoreyTaps = []tap{
	{"P_MBR_low", "master", 0.3}, {"P_MBR_mid", "master", 1.2}, {"P_MBR_high", "master", 2.1},
	{"P_BR3_low", "bedroom3", 0.3}, {"P_BR3_mid", "bedroom3", 1.2}, {"P_BR3_high", "bedroom3", 2.1},
	{"P_LR_low", "living", 0.3}, {"P_LR_mid", "living", 1.2}, {"P_LR_high", "living", 2.1},
	{"P_COR_low", "passage", 0.3}, {"P_COR_mid", "passage", 1.2}, {"P_COR_high", "passage", 2.1},
}

// twoStoreyHouses runs two tests of the two-storey house.
func twoStoreyHouses(library sim.Library, data *table) (Series, error) {
	s := Series{
		ID: "ul_nij_twostory_pressures", Title: "two-storey house, 500 kW",
		Notes: []string{
			"seventeen spaces joined to twelve, the most a scenario holds: laundry with kitchen, den with living room, lower foyer with the foot of the stairs, closet with main bedroom",
			"leakage of 0.18 m² at 10 Pa, at floor level, spread over the rooms by their floors, as in the zone-model input",
			"the burner stands against a wall, the taps stand in the rooms named, as in the FDS input of the same tests",
			sampledNote,
			"test 6 began in a house still warm from another test: every room starts at the mean of its tree",
		},
	}
	var means []spell
	for _, test := range []string{"1", "6"} {
		run := twoStoreyHouse(test)
		g, err := house(library, run, data.where("test", test), twoStoreyTaps, &s, nil)
		if err != nil {
			return s, err
		}
		g.judge(&s, "test "+test, twoStoreyEvents[test])
		means = append(means, g.spells(run.scenario)...)
	}
	s.Notes = append(s.Notes, offByTap(&s, twoStoreyTaps))
	pressureLines(&s)
	spellLine(&s, means)
	return s, nil
}

var twoStoreyEvents = map[string][]houseEvent{
	"1": {{"front door", 570, 750}, {"upstairs window", 870, 1050}, {"second upstairs window", 1170, 1410}},
	"6": {{"upstairs window", 570, 750}, {"kitchen window", 870, 1050}, {"front door", 1170, 1410}},
}
