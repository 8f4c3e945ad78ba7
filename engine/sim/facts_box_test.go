package sim_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"lintel/engine"
)

// boxFacts are the facts of small-box practice.
var boxFacts = []shown{
	{"Shutting the only port of the fire's cell chokes it", boxShutOnlyPort},
	{"While flame lasts on little air the smoke is darker", boxFlameOnLittleAir},
	{"Opening again: a lag, a surge, then it settles", boxOpenedAgain},
	{"A port nearly shut: lower plane, faster smoke", boxPortNearlyShut},
	{"Polystyrene: darker, denser, more", boxPolystyrene},
	{"The neighbour's port and the inner door feed the fire", boxNeighbourFeeds},
	{"Shutting the fire's own port moves burning to the air", boxFireGoesToAir},
	{"An upper port and the floor hole: outlet above, inlet below", boxUpperPort},
	{"The roof hatch needs the ceiling hatch under it", boxRoofHatch},
	{"Everything open is the largest fire", boxEverythingOpen},
	{"A hot cell rich in fuel gas, opened", boxFuelRich},
	{"Venting without water does not cool a fire that wants for air", boxVenting},
	{"Water cools", boxWater},
}

// growing is a box with little fuel: its fire never wants for air.
func growing(f testing.TB) engine.Scenario {
	sc := box(f)
	sc.Fuels = []engine.Fuel{{ID: "strips", In: "lower_left", Kind: "softwood", MassKg: ptr(0.6), IgniteS: ptr(0)}}
	return sc
}

// steady is a box with a gas burner in place of solid fuel.
func steady(f testing.TB, kW float64) engine.Scenario {
	sc := box(f)
	sc.Fuels = []engine.Fuel{{ID: "burner", In: "lower_left", Kind: engine.GasBurner, HRRKW: [][2]float64{{0, kW}}}}
	return sc
}

// Less or paler smoke after shutting is no improvement: gas keeps coming off.
func boxShutOnlyPort(f *fact) {
	b := light(f, box(f)).to(120)
	before := b.watch("port_lower_left", 5)
	b.set("port_lower_left", 0)
	early := b.watch("port_lower_left", 2)
	b.to(150)
	late := b.watch("port_lower_left", 5)
	f.table("Holds always; when flame has gone to smoulder there is less smoke and it is paler. Less or paler smoke after shutting is not improvement.", "before", "first 2 s", "25 s on")
	f.row("heat release, kW", before.kW, early.kW, late.kW)
	f.row("visible smoke K·V, m²/s", before.flux, early.flux, late.flux)
	f.row("lightness", before.lightness, early.lightness, late.lightness)
	f.row("share of fuel aflame", before.flame, early.flame, late.flame)
	assert.Less(f, late.kW, 0.2*before.kW)
	assert.Less(f, late.flame, 0.1, "it smoulders")
	assert.Greater(f, late.lightness, before.lightness)
	assert.Less(f, late.flux, 0.3*before.flux)
	assert.Positive(f, gasOf(b), "a smoulder is left")
}

// gasOf is the fuel gas that all fires give off, kg/s.
func gasOf(b *bench) float64 {
	gas := 0.0
	for _, fire := range b.Model().Fires {
		gas += fire.Gas
	}
	return gas
}

func boxFlameOnLittleAir(f *fact) {
	b := light(f, growing(f)).to(100)
	before := b.watch("port_lower_left", 4)
	b.set("port_lower_left", 0.2)
	b.watch("port_lower_left", 2)
	after := b.watch("port_lower_left", 4)
	f.table("Holds while flame lasts; the port was set to a fifth of its width.", "before", "after")
	f.row("heat release, kW", before.kW, after.kW)
	f.row("lightness", before.lightness, after.lightness)
	f.row("density K, 1/m", before.density, after.density)
	f.row("share of fuel aflame", before.flame, after.flame)
	assert.Greater(f, after.flame, 0.5, "flame lasts")
	assert.Less(f, after.lightness, before.lightness-0.02)
	assert.Greater(f, after.density, 1.2*before.density)
}

func boxOpenedAgain(f *fact) {
	b := light(f, box(f)).to(120)
	before := b.watch("port_lower_left", 5)
	b.set("port_lower_left", 0).to(145)
	shut := b.watch("port_lower_left", 1)
	start := b.TimeS()
	b.set("port_lower_left", 1)
	first := b.watch("port_lower_left", 0.4)
	surge := b.watch("port_lower_left", 30)
	b.to(215)
	after := b.watch("port_lower_left", 5)
	long := light(f, box(f)).to(120)
	long.set("port_lower_left", 0).to(1320)
	long.set("port_lower_left", 1)
	none := long.watch("port_lower_left", 60)
	f.table("Holds where an ember, a pilot or hot gas is left: none comes after 20 minutes shut.", "before", "shut", "at once", "surge", "settled", "after 20 min shut")
	f.row("heat release, kW", before.kW, shut.kW, first.kW, surge.most, after.kW, none.most)
	f.row("seconds from opening", 0, 0, 0.2, surge.mostAt-start, b.TimeS()-start, none.mostAt-1320)
	assert.Less(f, first.kW, 0.5*surge.most, "a lag")
	assert.Greater(f, surge.most, 1.1*before.kW)
	assert.Less(f, after.kW, surge.most)
	assert.Less(f, none.most, 0.1*before.kW)
}

func boxPortNearlyShut(f *fact) {
	b := light(f, growing(f)).to(60)
	before := b.watch("port_lower_left", 4)
	b.set("port_lower_left", 0.5)
	after := b.watch("port_lower_left", 4)
	full := light(f, box(f)).to(120)
	was := full.watch("port_lower_left", 2)
	full.set("port_lower_left", 0.25)
	is := full.watch("port_lower_left", 2)
	f.table("Holds where the fire wants for fuel, and the panel closes from the side. Short of air the speed falls with the fire: the last two columns are its first 2 s.", "before", "after", "short of air", "its first 2 s")
	f.row("neutral plane, m", before.plane, after.plane, was.plane, is.plane)
	f.row("speed of the outflow, m/s", before.speed, after.speed, was.speed, is.speed)
	f.row("heat release, kW", before.kW, after.kW, was.kW, is.kW)
	assert.Less(f, after.plane, before.plane)
	assert.Greater(f, after.speed, before.speed)
}

// More is visible smoke and not gas.
func boxPolystyrene(f *fact) {
	b := light(f, box(f)).to(120)
	twin := b.twin()
	twin.add("polystyrene", 0.05)
	b.to(130)
	twin.to(130)
	wood, foam := b.watch("port_lower_left", 10), twin.watch("port_lower_left", 10)
	f.table("Holds always, simulated only: 50 g of foam beside an untouched twin.", "wood", "with foam")
	f.row("lightness", wood.lightness, foam.lightness)
	f.row("density K, 1/m", wood.density, foam.density)
	f.row("visible smoke K·V, m²/s", wood.flux, foam.flux)
	assert.Less(f, foam.lightness, wood.lightness)
	assert.Greater(f, foam.density, 1.5*wood.density)
	assert.Greater(f, foam.flux, 1.5*wood.flux)
}

// The first port becomes mostly an outlet, the neighbour breathes both ways, and
// air runs low through the door toward the fire.
func boxNeighbourFeeds(f *fact) {
	sc := box(f)
	sc.Openings[0].SillM = 0.28
	b := light(f, sc).to(120)
	before := b.watch("port_lower_left", 5)
	b.set("port_lower_right", 1).set("door_lower", 1).to(140)
	after := b.watch("port_lower_left", 5)
	door, port := b.watch("door_lower", 2), b.watch("port_lower_right", 2)
	f.table("Strong where the fire's port sits higher: here its sill is raised to 0.28 m. Equal sills share.", "before", "after")
	f.row("fire's port, out, g/s", before.out, after.out)
	f.row("fire's port, in, g/s", before.in, after.in)
	f.row("neighbour's port, out, g/s", 0, port.out)
	f.row("neighbour's port, in, g/s", 0, port.in)
	f.row("air low through the door, g/s", 0, door.in)
	f.row("heat release, kW", before.kW, after.kW)
	assert.Greater(f, after.out/(after.out+after.in), before.out/(before.out+before.in)+0.05)
	assert.Greater(f, port.in, 0.0)
	assert.Greater(f, door.in, 5.0, "air low through the door")
	assert.Greater(f, after.kW, before.kW)
}

func boxFireGoesToAir(f *fact) {
	b := light(f, box(f)).to(110)
	b.set("port_lower_right", 1).set("door_lower", 1).to(130)
	before := b.watch("port_lower_left", 5)
	b.set("port_lower_left", 0)
	b.to(138)
	after := b.watch("port_lower_left", 10)
	f.table("Mostly for the first quarter of a minute.", "before", "after")
	f.row("burning outside the fire's cell, %", 100*elsewhere(before), 100*elsewhere(after))
	f.row("heat release, kW", before.kW, after.kW)
	assert.Greater(f, elsewhere(after), elsewhere(before)+0.1)
}

func elsewhere(s seen) float64 { return 1 - s.roomKW/s.kW }
