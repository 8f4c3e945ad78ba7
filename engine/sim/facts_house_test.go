package sim_test

import (
	"github.com/stretchr/testify/assert"

	"lintel/engine"
)

// houseFacts are those of the box that make sense at full size.
var houseFacts = []shown{
	{"Shutting the only door chokes the fire", houseShutOnlyDoor},
	{"Opening again: a lag, then a larger fire", houseOpenedAgain},
	{"A door nearly shut: lower plane, faster smoke", houseDoorNearlyShut},
	{"Foam among the wood: darker, denser, more", houseFoam},
	{"The neighbour's window and the inner door feed the fire", houseNeighbourFeeds},
	{"An upper window and the stairs: outlet above, inlet below", houseUpperWindow},
	{"The roof needs the ceiling hatch under it", houseRoof},
	{"Everything open is the largest fire", houseEverythingOpen},
	{"Venting without water does not cool a fire that wants for air", houseVenting},
	{"Water cools", houseWater},
}

// twoStoreys is a house of four rooms and a loft, laid out as the box is and
// with the same names of openings, so that one bench watches both. Invented.
func twoStoreys(fuels ...engine.Fuel) engine.Scenario {
	room := func(id string, floor, x float64) engine.Compartment {
		return engine.Compartment{ID: id, WidthM: 4, DepthM: 4, HeightM: 2.4, FloorM: floor, Lining: "gypsum", XM: ptr(x), YM: ptr(0)}
	}
	hole := func(id, from, to string, kind engine.OpeningKind, area float64) engine.Opening {
		return engine.Opening{ID: id, From: from, To: to, Kind: kind, AreaM2: area, Shape: "square", Open: ptr(0)}
	}
	wall := func(id, from, to string, kind engine.OpeningKind, sill, width, height float64) engine.Opening {
		o := engine.Opening{ID: id, From: from, To: to, Kind: kind, SillM: sill, WidthM: width, HeightM: height, Open: ptr(0)}
		if to == engine.Outside {
			o.Side = engine.Alpha
		}
		return o
	}
	loft := room("void", 4.8, 0)
	loft.WidthM, loft.HeightM = 8, 0.8
	sc := engine.Scenario{
		V: 1, Name: "Two storeys", Ambient: engine.Ambient{TempC: 15}, EndS: 1800,
		Compartments: []engine.Compartment{room("lower_left", 0, 0), room("lower_right", 0, 4), room("upper_left", 2.4, 0), room("upper_right", 2.4, 4), loft},
		Openings: []engine.Opening{
			wall("port_lower_left", "lower_left", engine.Outside, engine.Door, 0, 0.9, 2.0),
			wall("port_lower_right", "lower_right", engine.Outside, engine.Window, 0.6, 1.2, 1.4),
			wall("port_upper_left", "upper_left", engine.Outside, engine.Window, 0.9, 1.2, 1.1),
			wall("port_upper_right", "upper_right", engine.Outside, engine.Window, 0.9, 1.2, 1.1),
			wall("door_lower", "lower_left", "lower_right", engine.Door, 0, 0.8, 2.0),
			wall("door_upper", "upper_left", "upper_right", engine.Door, 0, 0.8, 2.0),
			hole("floor_hole", "upper_left", "lower_left", engine.FloorHole, 1.4),
			hole("ceiling_hatch", "upper_right", "void", engine.CeilingHatch, 0.6),
			hole("roof_hatch", "void", engine.Outside, engine.RoofHatch, 1.0),
		},
		Fuels: fuels,
	}
	sc.Openings[0].Open = ptr(1)
	return sc
}

func sofa(mass float64) engine.Fuel {
	return engine.Fuel{ID: "sofa", In: "lower_left", Kind: "upholstered", MassKg: ptr(mass), IgniteS: ptr(0), Place: engine.Wall}
}

func timber(mass float64) engine.Fuel {
	return engine.Fuel{ID: "table", In: "lower_left", Kind: "timber", MassKg: ptr(mass)}
}

func gasBurner(kW float64) engine.Fuel {
	return engine.Fuel{ID: "burner", In: "lower_left", Kind: engine.GasBurner, HRRKW: [][2]float64{{0, kW}}}
}

func houseShutOnlyDoor(f *fact) {
	b := light(f, twoStoreys(sofa(60), timber(60))).to(240)
	before := b.watch("port_lower_left", 10)
	b.set("port_lower_left", 0).to(360)
	late := b.watch("port_lower_left", 10)
	f.table("Holds always. Less smoke after shutting is not improvement: gas keeps coming off.", "before", "two minutes on")
	f.row("heat release, kW", before.kW, late.kW)
	f.row("visible smoke K·V, m²/s", before.flux, late.flux)
	f.row("fuel gas given off, g/s", 0, 1000*gasOf(b))
	assert.Less(f, late.kW, 0.2*before.kW)
	assert.Less(f, late.flux, 0.3*before.flux)
	assert.Positive(f, gasOf(b))
}

func houseOpenedAgain(f *fact) {
	b := light(f, twoStoreys(sofa(60), timber(60))).to(240)
	b.set("port_lower_left", 0).to(360)
	shut := b.watch("port_lower_left", 5)
	start := b.TimeS()
	b.set("port_lower_left", 1)
	first := b.watch("port_lower_left", 1)
	surge := b.watch("port_lower_left", 180)
	f.table("Holds where an ember, a pilot or hot gas is left.", "shut", "first second", "peak", "seconds to the peak")
	f.row("heat release, kW", shut.kW, first.kW, surge.most, surge.mostAt-start)
	assert.Less(f, first.kW, 0.5*surge.most, "a lag")
	assert.Greater(f, surge.most, 1.5*shut.kW)
}

func houseDoorNearlyShut(f *fact) {
	b := light(f, twoStoreys(gasBurner(150))).to(300)
	before := b.watch("port_lower_left", 10)
	b.set("port_lower_left", 0.5)
	after := b.watch("port_lower_left", 10)
	f.table("Holds where the fire wants for fuel: a steady burner of 150 kW.", "before", "after")
	f.row("neutral plane, m", before.plane, after.plane)
	f.row("speed of the outflow, m/s", before.speed, after.speed)
	assert.Less(f, after.plane, before.plane)
	assert.Greater(f, after.speed, before.speed)
}

func houseFoam(f *fact) {
	b := light(f, twoStoreys(timber(60), sofa(5))).to(200)
	twin := b.twin()
	twin.add("polystyrene", 2)
	b.to(230)
	twin.to(230)
	wood, foam := b.watch("port_lower_left", 20), twin.watch("port_lower_left", 20)
	f.table("2 kg of foam beside an untouched twin, half a minute on.", "as it was", "with foam")
	f.row("lightness", wood.lightness, foam.lightness)
	f.row("density K, 1/m", wood.density, foam.density)
	f.row("visible smoke K·V, m²/s", wood.flux, foam.flux)
	assert.Less(f, foam.lightness, wood.lightness)
	assert.Greater(f, foam.density, 1.5*wood.density)
	assert.Greater(f, foam.flux, 1.5*wood.flux)
}

func houseNeighbourFeeds(f *fact) {
	b := light(f, twoStoreys(sofa(60), timber(200))).to(300)
	before := b.watch("port_lower_left", 10)
	b.set("port_lower_right", 1).set("door_lower", 1).to(330)
	after := b.watch("port_lower_left", 10)
	door := b.watch("door_lower", 5)
	f.table("Half a minute after opening; the fire was short of air.", "before", "after")
	f.row("burning inside, kW", before.insideKW, after.insideKW)
	f.row("air through the inner door toward the fire, g/s", 0, door.in)
	assert.Greater(f, after.insideKW, before.insideKW)
	assert.Greater(f, door.in, 50.0)
}

func houseUpperWindow(f *fact) {
	b := light(f, twoStoreys(gasBurner(400))).to(200)
	b.set("floor_hole", 1).set("port_upper_left", 0.5).to(400)
	lower, upper := b.watch("port_lower_left", 10), b.watch("port_upper_left", 10)
	b.set("port_lower_left", 0).to(430)
	shut := b.watch("port_upper_left", 10)
	f.table("Steady burner of 400 kW; the upper window stands half open.", "front door open", "shut")
	f.row("upper window: speed, m/s", upper.speed, shut.speed)
	f.row("upper window: out, g/s", upper.out, shut.out)
	f.row("upper window: in, g/s", upper.in, shut.in)
	f.row("front door: in less out, g/s", lower.in-lower.out, 0)
	assert.Greater(f, lower.in, lower.out, "inlet below")
	assert.Less(f, upper.in, 0.1*upper.out, "outlet above")
	assert.Less(f, shut.speed, 0.95*upper.speed)
}

func houseRoof(f *fact) {
	path := func() *bench {
		return light(f, twoStoreys(sofa(60), timber(60))).to(300).set("floor_hole", 1).set("door_upper", 1).to(360)
	}
	twin, roof, both := path(), path(), path()
	roof.set("roof_hatch", 1)
	both.set("roof_hatch", 1).set("ceiling_hatch", 1)
	none := twin.to(420).watch("roof_hatch", 20)
	alone := roof.to(420).watch("roof_hatch", 20)
	through := both.to(420).watch("roof_hatch", 20)
	f.table("Against an untouched twin, a minute after opening.", "both shut", "roof alone", "both open")
	f.row("burning inside, kW", none.insideKW, alone.insideKW, through.insideKW)
	f.row("speed at the roof, m/s", none.speed, alone.speed, through.speed)
	f.row("density K at the roof, 1/m", none.density, alone.density, through.density)
	assert.InEpsilon(f, none.insideKW, alone.insideKW, 0.05)
	assert.Greater(f, through.insideKW, 1.05*none.insideKW)
	assert.Greater(f, through.speed, alone.speed)
}

func houseEverythingOpen(f *fact) {
	sets := [][]string{
		nil,
		{"port_lower_right", "door_lower"},
		{"floor_hole", "port_upper_left"},
		{"port_lower_right", "door_lower", "floor_hole", "port_upper_left", "port_upper_right", "door_upper", "ceiling_hatch", "roof_hatch"},
	}
	var kW []float64
	for _, openings := range sets {
		b := light(f, twoStoreys(sofa(60), timber(200))).to(300)
		for _, o := range openings {
			b.set(o, 1)
		}
		kW = append(kW, b.to(330).watch("port_lower_left", 30).insideKW)
	}
	f.table("Each from the same fire, half a minute after the opening.", "front door", "and the neighbour", "and the upper window", "everything")
	f.row("burning inside, kW", kW...)
	for _, x := range kW[:len(kW)-1] {
		assert.Greater(f, kW[len(kW)-1], x)
	}
}

// measuredCooling is by how much of its rise over the laboratory the hot layer over
// a steady burner fell when windows were opened above it: 88.1 to 82.4 K, while all
// about it still warmed (NIST Vent Study, test 3 at 2,370 and 3,570 s; the twin with
// windows open from the start was 12 per cent cooler), see testdata/validation.
const measuredCooling = 0.065

func houseVenting(f *fact) {
	sc := twoStoreys(sofa(60), timber(60))
	sc.Openings[0].Open = ptr(0.3)
	twin := light(f, sc).to(420)
	vented := twin.twin()
	vented.set("port_lower_left", 1)
	unopened, opened := twin.to(476).watch("port_lower_left", 8), vented.to(476).watch("port_lower_left", 8)

	few := twoStoreys(gasBurner(150))
	twin = light(f, few).to(300)
	cooler := twin.twin()
	cooler.set("door_lower", 1).set("port_lower_right", 1)
	was, is := twin.to(360).watch("port_lower_left", 8), cooler.to(360).watch("port_lower_left", 8)
	f.table("A minute after opening, against the unopened twin. A fire that wants for fuel does cool.", "short of air, unopened", "opened", "short of fuel, unopened", "opened")
	f.row("heat release, kW", unopened.kW, opened.kW, was.kW, is.kW)
	f.row("upper layer, °C", unopened.upperC, opened.upperC, was.upperC, is.upperC)
	assert.Greater(f, opened.kW, unopened.kW)
	assert.Greater(f, opened.upperC, unopened.upperC-5)
	assert.Greater(f, was.upperC-is.upperC, measuredCooling*(was.upperC-few.Ambient.TempC))
}

func houseWater(f *fact) {
	twin := light(f, twoStoreys(sofa(60), timber(60))).to(300)
	wet := twin.twin()
	wet.water(60)
	dry := twin.to(305).watch("port_lower_left", 10)
	cooled := wet.to(305).watch("port_lower_left", 10)
	f.table("60 litres on the fire, 5 to 15 s on, against a dry twin.", "dry", "with water")
	f.row("heat release, kW", dry.kW, cooled.kW)
	f.row("upper layer, °C", dry.upperC, cooled.upperC)
	assert.Less(f, cooled.kW, 0.8*dry.kW)
	assert.Less(f, cooled.upperC, dry.upperC-50)
}
