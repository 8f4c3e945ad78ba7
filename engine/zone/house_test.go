package zone_test

import (
	"math/rand/v2"
	"strconv"

	"lintel/engine"
)

// randomHouse is a building of stacked and neighbouring rooms with openings of
// every kind, fuels and moves, all from one seed. Invented, only to shake the
// model.
func randomHouse(seed uint64) engine.Scenario {
	r := rand.New(rand.NewPCG(seed, 77))
	between := func(a, b float64) float64 { return a + (b-a)*r.Float64() }
	scale := []float64{0.25, 1, 1.4}[r.IntN(3)]
	linings := []string{"gypsum", "osb", "concrete", "ceramic_fibre", "plywood", "steel"}
	sc := engine.Scenario{V: 1, EndS: 60, Ambient: engine.Ambient{TempC: between(-10, 35)}}
	if r.IntN(2) == 0 {
		sc.Ambient.WindMS, sc.Ambient.WindFrom = between(0, 15), engine.Sides[r.IntN(4)]
	}
	wide, deep, high := between(2, 5)*scale, between(2, 5)*scale, between(2, 3)*scale
	columns, storeys := 1+r.IntN(3), 1+r.IntN(2)
	for s := range storeys {
		for c := range columns {
			sc.Compartments = append(sc.Compartments, engine.Compartment{
				ID: name("r", c+10*s), WidthM: wide, DepthM: deep, HeightM: high, FloorM: float64(s) * high,
				Lining: linings[r.IntN(len(linings))],
			})
		}
	}
	for s := range storeys {
		for c := range columns {
			from := name("r", c+10*s)
			sc.Openings = append(sc.Openings, side(from, engine.Outside, engine.Sides[r.IntN(4)], r, high, min(wide, deep)))
			if c+1 < columns {
				sc.Openings = append(sc.Openings, side(from, name("r", c+1+10*s), "", r, high, min(wide, deep)))
			}
			if s+1 < storeys {
				sc.Openings = append(sc.Openings, engine.Opening{ID: "hole" + from, From: from, To: name("r", c+10*(s+1)),
					Kind: engine.CeilingHatch, AreaM2: between(0.01, 0.2) * wide * deep, Shape: "square", Open: ptr(float64(r.IntN(2)))})
			} else if r.IntN(2) == 0 {
				sc.Openings = append(sc.Openings, engine.Opening{ID: "roof" + from, From: from, To: engine.Outside,
					Kind: engine.RoofHatch, AreaM2: between(0.01, 0.1) * wide * deep, Shape: "round", Open: ptr(float64(r.IntN(2)))})
			}
		}
	}
	kinds := []string{"straw", "softwood", "polystyrene", "upholstered", "timber"}
	for i := range 1 + r.IntN(3) {
		in := sc.Compartments[r.IntN(len(sc.Compartments))].ID
		if r.IntN(3) == 0 {
			sc.Fuels = append(sc.Fuels, engine.Fuel{ID: name("f", i), In: in, Kind: engine.GasBurner,
				HRRKW: [][2]float64{{between(0, 10), between(5, 800) * scale * scale * scale}}})
			continue
		}
		sc.Fuels = append(sc.Fuels, engine.Fuel{ID: name("f", i), In: in, Kind: kinds[r.IntN(len(kinds))],
			MassKg: ptr(between(0.3, 40) * scale * scale * scale), IgniteS: ptr(between(0, 5)), Place: engine.Places[r.IntN(3)]})
	}
	return sc
}

func name(prefix string, i int) string { return prefix + strconv.Itoa(i) }

func side(from, to string, on engine.Side, r *rand.Rand, high, wall float64) engine.Opening {
	sill := high * 0.4 * float64(r.IntN(2))
	return engine.Opening{ID: "v" + from + to, From: from, To: to, Side: on, Kind: engine.Window, SillM: sill,
		WidthM: wall * (0.05 + 0.4*r.Float64()), HeightM: high*0.9 - sill, Open: ptr(float64(r.IntN(3)) / 2)}
}
