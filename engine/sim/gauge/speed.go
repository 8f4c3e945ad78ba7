// Package gauge holds what is needed to measure the fire beside a control: the
// building that speed is measured on, the same equations stepped explicitly, and
// the audit of random houses. It takes no time itself; the caller holds the clock.
package gauge

import (
	"strconv"

	"lintel/engine"
	"lintel/engine/zone"
)

// House is a row of rooms on two floors (one to twelve in all) with doors, holes,
// windows and a roof hatch, a solid fire in the first room, and openings that
// move all the time. Invented, to measure speed on.
func House(rooms int, endS float64) engine.Scenario {
	sc := engine.Scenario{V: 1, Name: "speed", Ambient: engine.Ambient{TempC: 15, WindMS: 3, WindFrom: engine.Alpha}, EndS: endS}
	for i := range rooms {
		sc.Compartments = append(sc.Compartments, engine.Compartment{
			ID: room(i), WidthM: 3.6, DepthM: 4, HeightM: 2.4, FloorM: 2.4 * float64(i%2), Lining: "gypsum",
		})
	}
	for i := range rooms {
		sc.Openings = append(sc.Openings, opening(room(i), engine.Outside, engine.Window, i))
		if i%2 == 0 && i+1 < rooms {
			sc.Openings = append(sc.Openings, engine.Opening{
				ID: "hole_" + room(i), From: room(i), To: room(i + 1), Kind: engine.CeilingHatch, AreaM2: 0.8, Shape: "square", Open: number(1),
			})
		}
		if i+2 < rooms {
			sc.Openings = append(sc.Openings, opening(room(i), room(i+2), engine.Door, i))
		}
	}
	sc.Fuels = []engine.Fuel{{ID: "sofa", In: room(0), Kind: "upholstered", MassKg: number(60), IgniteS: number(0)}}
	sc.Moves = shuffle(sc.Openings, endS)
	return sc
}

func room(i int) string { return "room_" + strconv.Itoa(i) }

func number(x float64) *float64 { return &x }

func opening(from, to string, kind engine.OpeningKind, i int) engine.Opening {
	o := engine.Opening{ID: string(kind) + "_" + from, From: from, To: to, Kind: kind, WidthM: 0.9, HeightM: 2, Open: number(1)}
	if kind == engine.Window {
		o.SillM, o.HeightM, o.WidthM, o.Side = 0.9, 1.2, 1.2, engine.Sides[i%len(engine.Sides)]
	}
	return o
}

// shuffle moves one opening every two seconds, over one second each.
func shuffle(openings []engine.Opening, endS float64) []engine.Move {
	var moves []engine.Move
	for k := range min(int(endS/2), engine.MaxMoves) {
		share := []float64{0.3, 1, 0.6, 0}[(k/len(openings))%4]
		moves = append(moves, engine.Move{TS: float64(2 * k), Opening: openings[k%len(openings)].ID, Open: &share, OverS: 1})
	}
	return moves
}

// Explicit runs the same building by the same equations with the pressures
// stepped in time instead of solved, for seconds of fire, and returns the model:
// the control of the speed figure. Moves are left out.
func Explicit(sc engine.Scenario, materials engine.Materials, seconds float64) (*zone.Model, error) {
	m, err := zone.New(sc, materials)
	if err != nil {
		return nil, err
	}
	for m.Time < seconds {
		m.StepExplicit(ExplicitStepS)
	}
	return m, nil
}

// ExplicitStepS is the step at which the pressure equation of a room of this
// size is still stable with its openings nearly shut: found by trial, 0.1 ms
// diverges. The moves are what asks for it.
const ExplicitStepS = 2e-5
