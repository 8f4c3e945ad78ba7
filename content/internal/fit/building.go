package main

import (
	"math/rand/v2"
	"strconv"

	"lintel/engine"
)

// The kinds and sizes below are chosen by us: houses of one or two storeys and
// small burn boxes, each with one to four compartments in a row.

var (
	houseFuels   = []string{"upholstered", "polyurethane", "timber", "softwood", "paper"}
	boxFuels     = []string{"straw", "softwood", "softwood"}
	houseLinings = []string{"gypsum", "plaster", "brick", "plywood"}
	boxLinings   = []string{"osb", "plywood"}
)

// draw makes a random fire. Every seed gives the same one.
func draw(seed uint64) engine.Scenario {
	rng := rand.New(rand.NewPCG(seed, 0x6c696e74656c))
	b := builder{rng: rng, scale: 1, fuels: houseFuels, linings: houseLinings}
	if rng.IntN(4) == 0 {
		b.scale, b.fuels, b.linings = 0.22, boxFuels, boxLinings
	}
	return b.scenario()
}

type builder struct {
	rng     *rand.Rand
	scale   float64 // 1 for a house
	fuels   []string
	linings []string
	sc      engine.Scenario
}

func (b *builder) between(low, high float64) float64 { return low + (high-low)*b.rng.Float64() }

func (b *builder) chance(p float64) bool { return b.rng.Float64() < p }

func (b *builder) pick(list []string) string { return list[b.rng.IntN(len(list))] }

func (b *builder) scenario() engine.Scenario {
	b.sc = engine.Scenario{V: 1, Ambient: engine.Ambient{TempC: b.between(-5, 30)}, EndS: 1200}
	if b.chance(0.25) {
		b.sc.Ambient.WindMS = b.between(1, 8)
		b.sc.Ambient.WindFrom = engine.Sides[b.rng.IntN(4)]
	}
	rooms := 1 + b.rng.IntN(4)
	twoStoreys := rooms > 1 && b.chance(0.4)
	lining := b.pick(b.linings)
	height := b.scale * b.between(2.3, 2.8)
	for i := range rooms {
		floor := 0.0
		if twoStoreys && i >= (rooms+1)/2 {
			floor = height + 0.1*b.scale
		}
		b.room(i, lining, height, floor)
	}
	b.join()
	b.fuel(rooms)
	return b.sc
}

// room adds a compartment with its leak and its openings to the outside.
func (b *builder) room(i int, lining string, height, floor float64) {
	id := "r" + strconv.Itoa(i)
	area := b.scale * b.scale
	b.sc.Compartments = append(b.sc.Compartments, engine.Compartment{
		ID: id, WidthM: b.scale * b.between(2.5, 6), DepthM: b.scale * b.between(2.5, 5), HeightM: height,
		FloorM: floor, Lining: lining, LeakM2: new(area * b.between(0.003, 0.03)),
	})
	for n := range 1 + b.rng.IntN(2) {
		o := engine.Opening{
			ID: id + "_o" + strconv.Itoa(n), From: id, To: engine.Outside,
			Side: engine.Sides[b.rng.IntN(4)], Open: new(0.0),
		}
		b.shape(&o, floor, height)
		if b.chance(0.6) {
			*o.Open = 1
		}
		b.sc.Openings = append(b.sc.Openings, o)
	}
	if b.chance(0.5) {
		b.sc.Openings = append(b.sc.Openings, engine.Opening{
			ID: id + "_gap", From: id, To: engine.Outside, Side: engine.Sides[b.rng.IntN(4)], Kind: engine.Leak,
			SillM: 0.05 * height, WidthM: b.scale * b.between(0.005, 0.02), HeightM: 0.9 * height, Open: new(1.0),
		})
	}
	if b.chance(0.12) {
		b.sc.Openings = append(b.sc.Openings, engine.Opening{
			ID: id + "_roof", From: id, To: engine.Outside, Kind: engine.RoofHatch, Shape: "square",
			AreaM2: area * b.between(0.3, 1.2), Open: new(float64(b.rng.IntN(2))),
		})
	}
}

func (b *builder) shape(o *engine.Opening, floor, height float64) {
	switch {
	case b.scale < 1:
		o.Kind, o.SillM = engine.Port, height*b.between(0, 0.4)
		o.WidthM, o.HeightM = b.scale*b.between(0.5, 1.2), height*b.between(0.25, 0.55)
	case floor == 0 && b.chance(0.5):
		o.Kind, o.WidthM, o.HeightM = engine.Door, b.between(0.7, 1.2), b.between(1.9, 2.1)
	default:
		o.Kind, o.SillM = engine.Window, b.between(0.7, 1.0)
		o.WidthM, o.HeightM = b.between(0.6, 1.8), b.between(0.6, 1.2)
	}
}

// join links each compartment with the one before: a door on the same floor, a
// hole through the floor between storeys.
func (b *builder) join() {
	for i := 1; i < len(b.sc.Compartments); i++ {
		here, before := &b.sc.Compartments[i], &b.sc.Compartments[i-1]
		o := engine.Opening{ID: "in" + strconv.Itoa(i), From: here.ID, To: before.ID, Open: new(1.0)}
		if here.FloorM != before.FloorM {
			o.Kind, o.Shape, o.AreaM2 = engine.FloorHole, "square", b.scale*b.scale*b.between(0.5, 2.5)
		} else {
			o.Kind, o.WidthM, o.HeightM = engine.Door, b.scale*b.between(0.7, 1.0), 0.83*here.HeightM
		}
		if b.chance(0.25) {
			*o.Open = 0
		}
		b.sc.Openings = append(b.sc.Openings, o)
	}
}

// fuel lights one package and may leave a second to catch.
func (b *builder) fuel(rooms int) {
	volume := b.scale * b.scale * b.scale
	for n := range 1 + b.rng.IntN(2) {
		f := engine.Fuel{
			ID: "f" + strconv.Itoa(n), In: "r" + strconv.Itoa(b.rng.IntN(rooms)), Kind: b.pick(b.fuels),
			MassKg: new(volume * b.between(3, 10) * b.between(1, 12)), BaseM: new(0.2 * b.scale),
			Place: engine.Places[b.rng.IntN(3)],
		}
		if n == 0 {
			f.IgniteS = new(0.0)
		} else {
			f.In = b.sc.Fuels[0].In
		}
		b.sc.Fuels = append(b.sc.Fuels, f)
	}
}
