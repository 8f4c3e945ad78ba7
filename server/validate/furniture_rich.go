package validate

import (
	"fmt"
	"math"

	"lintel/engine"
	"lintel/engine/sim"
)

// richRoom is a furnished room given as much fuel as its opening's air can burn,
// or more.
type richRoom struct {
	name             string
	sill, wide, tall float64 // of its opening, m
	ruleKW           float64 // what the rule 1500 A√H lets burn inside
}

var richRooms = []richRoom{
	{"room with door", 0, 1.29, 2.00, 1500 * 3.649},
	{"room with window", 0.87, 2.00, 1.13, 1500 * 2.402},
}

// richCases are how many times the rule's power is offered. The line of acceptance
// is on a fifth more, so that air alone sets what burns; the rule itself and a
// fifth less, where fuel sets it, stand beside it.
var richCases = []struct {
	times   float64
	name    string
	further bool
}{
	{1.2, "a fifth more fuel than 1500 A√H", false},
	{1.0, "fuel for 1500 A√H", true},
	{0.8, "a fifth less fuel than 1500 A√H", true},
}

const richEndS = 300

// richRoomsOf runs both rooms with every offer.
func richRoomsOf(library sim.Library, s *Series) error {
	var hot, below []float64
	for _, room := range richRooms {
		for _, c := range richCases {
			ran, err := room.run(library, c.times)
			if err != nil {
				return err
			}
			s.FireS += richEndS
			hot, below = append(hot, ran.hot...), append(below, ran.below...)
			add := s.line
			if c.further {
				add = s.further
			}
			furnitureLines(add, room.name+", "+c.name, ran.planes, ran.ratios)
		}
	}
	s.Notes = append(s.Notes, hotNote(hot, below))
	return nil
}

// hotNote says why the planes of these rooms lie low.
func hotNote(hot, below []float64) string {
	least, most := extremes(hot)
	nearest, furthest := extremes(below)
	return fmt.Sprintf("given about as much fuel as 1500 A√H for 2 to 5 minutes, our gas is %.0f to %.0f °C; 760 to 910 °C was measured in rooms that burned half of that for two. The model is too hot: the water bound in gypsum, a fifth of its mass, is left out. Tried as heat that the boards of walls and ceiling take at 100 to 200 °C (0.18 of their mass, 2.9 MJ/kg), it cools this gas by 35 to 70 K, but closed rooms and the measured fire, both too cold already, by 6 to 7 per cent as well. A fifth less fuel than the rule can give no more than 0.80 where the inflow is the rule's own 0.5 A√H, so that line stands on its edge. "+
		"Heat sets the plane: by hand, one gas as hot and as much going out, it lies %.3f to %.3f below ours, which has cool air along the floor, and at 900 °C with a twentieth more going out than coming in it is at %.3f", least, most, nearest, furthest, handPlane(900, 1.05))
}

// richRun is what a room given so much fuel did, by half minutes.
type richRun struct {
	planes, ratios, hot []float64
	below               []float64 // how far the hand value lies below each plane
}

func (room richRoom) run(library sim.Library, times float64) (richRun, error) {
	sc := furnitureScenario(nil)
	sc.Name, sc.EndS = room.name, richEndS
	sc.Openings = []engine.Opening{slot("door", "room", engine.Outside, room.sill, room.wide, room.tall, 1)}
	sc.Fuels[0].HRRKW = [][2]float64{{0, 0}, {60, times * room.ruleKW}}
	var ran richRun
	p, err := start(library, sc)
	if err != nil {
		return ran, err
	}
	for at := 120.0; at < richEndS; at += 30 {
		got, err := p.mean(at, at+30, neutral("door"), inflow("door"), outflow("door"), indoors("room"), upper("room"))
		if err != nil {
			return ran, err
		}
		plane, hotC := (got[0]-room.sill)/room.tall, got[4]+sc.Ambient.TempC
		ran.planes = append(ran.planes, plane)
		ran.ratios = append(ran.ratios, got[3]/1000/(3.0*got[1]))
		ran.hot = append(ran.hot, hotC)
		ran.below = append(ran.below, plane-handPlane(hotC, got[2]/got[1]))
	}
	return ran, nil
}

// handPlane is the neutral plane of a well-mixed room as a share of its opening's
// height: 1 / (1 + (m² ρa/ρg)^(1/3)), m the outflow over the inflow. From the
// formula of flow through one opening with one gas on each side.
func handPlane(gasC, outOverIn float64) float64 {
	const kelvin, outsideC = 273.15, 23.4
	return 1 / (1 + math.Cbrt(outOverIn*outOverIn*(gasC+kelvin)/(outsideC+kelvin)))
}
