package gauge

import (
	"math/rand/v2"
	"strconv"

	"lintel/engine"
	"lintel/engine/zone"
)

// RandomHouse is a building of stacked and neighbouring rooms with openings of
// every kind, fuels and moves, all from one seed. Invented, only to shake the
// model.
func RandomHouse(seed uint64) engine.Scenario {
	h := &builder{Rand: rand.New(rand.NewPCG(seed, 77))}
	h.scale = []float64{0.25, 1, 1.4}[h.IntN(3)]
	h.sc = engine.Scenario{V: 1, Name: "random", EndS: 60, Ambient: engine.Ambient{TempC: h.between(-10, 35)}}
	if h.IntN(2) == 0 {
		h.sc.Ambient.WindMS, h.sc.Ambient.WindFrom = h.between(0, 15), engine.Sides[h.IntN(4)]
	}
	h.wide, h.deep, h.high = h.between(2, 5)*h.scale, h.between(2, 5)*h.scale, h.between(2, 3)*h.scale
	columns, storeys := 1+h.IntN(3), 1+h.IntN(2)
	for s := range storeys {
		for c := range columns {
			h.sc.Compartments = append(h.sc.Compartments, h.room(c, s))
		}
	}
	for s := range storeys {
		for c := range columns {
			h.cut(c, s, columns, storeys)
		}
	}
	for i := range 1 + h.IntN(3) {
		h.sc.Fuels = append(h.sc.Fuels, h.fuel(i))
	}
	return h.sc
}

// builder makes a house from one stream of random numbers.
type builder struct {
	*rand.Rand
	sc                      engine.Scenario
	scale, wide, deep, high float64
}

func (h *builder) between(a, b float64) float64 { return a + float64((b-a)*h.Float64()) }

func (h *builder) room(column, storey int) engine.Compartment {
	linings := []string{"gypsum", "osb", "concrete", "ceramic_fibre", "plywood", "steel"}
	return engine.Compartment{
		ID: cell(column, storey), WidthM: h.wide, DepthM: h.deep, HeightM: h.high,
		FloorM: float64(storey) * h.high, Lining: linings[h.IntN(len(linings))],
	}
}

func cell(column, storey int) string { return "r" + strconv.Itoa(column+10*storey) }

// cut gives a room a window, a door to its neighbour, and a hatch over it.
func (h *builder) cut(column, storey, columns, storeys int) {
	from := cell(column, storey)
	h.sc.Openings = append(h.sc.Openings, h.side(from, engine.Outside, engine.Sides[h.IntN(4)]))
	if column+1 < columns {
		h.sc.Openings = append(h.sc.Openings, h.side(from, cell(column+1, storey), ""))
	}
	hatch := engine.Opening{From: from, Kind: engine.CeilingHatch, Shape: "square", Open: number(float64(h.IntN(2)))}
	hatch.ID, hatch.AreaM2 = "hatch_"+from, h.between(0.01, 0.2)*h.wide*h.deep
	switch {
	case storey+1 < storeys:
		hatch.To = cell(column, storey+1)
	case h.IntN(2) == 0:
		hatch.To, hatch.Kind, hatch.Shape = engine.Outside, engine.RoofHatch, "round"
	default:
		return
	}
	h.sc.Openings = append(h.sc.Openings, hatch)
}

func (h *builder) side(from, to string, on engine.Side) engine.Opening {
	sill := float64(h.high * 0.4 * float64(h.IntN(2)))
	return engine.Opening{
		ID: "v_" + from + "_" + to, From: from, To: to, Side: on, Kind: engine.Window, SillM: sill,
		WidthM: min(h.wide, h.deep) * h.between(0.05, 0.45), HeightM: float64(0.9*h.high) - sill, Open: number(float64(h.IntN(3)) / 2),
	}
}

func (h *builder) fuel(i int) engine.Fuel {
	kinds := []string{"straw", "softwood", "polystyrene", "upholstered", "timber"}
	size := h.scale * h.scale * h.scale
	f := engine.Fuel{ID: "f" + strconv.Itoa(i), In: h.sc.Compartments[h.IntN(len(h.sc.Compartments))].ID, Place: engine.Places[h.IntN(3)]}
	if h.IntN(3) == 0 {
		f.Kind, f.HRRKW = engine.GasBurner, [][2]float64{{h.between(0, 10), h.between(5, 800) * size}}
		return f
	}
	f.Kind, f.MassKg, f.IgniteS = kinds[h.IntN(len(kinds))], number(h.between(0.3, 40)*size), number(h.between(0, 5))
	return f
}

// Disturb makes one random move: an opening set, or water.
func Disturb(m *zone.Model, r *rand.Rand) {
	if r.IntN(4) < 3 {
		m.SetOpening(r.IntN(len(m.Vents)-len(m.Rooms)), r.Float64(), 2*r.Float64())
		return
	}
	m.AddWater(r.IntN(len(m.Rooms)), r.Float64())
}
