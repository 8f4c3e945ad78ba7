package sim_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"lintel/engine"
)

// The facts of small-box practice: what an instructor shows on the bench by one
// move, each as a before and after. All are common practice (no source); each
// says when it holds. Numbers are printed with -v.

// Shutting the only port of the fire's cell chokes it. While flame lasts on
// little air the smoke is darker; when it has gone to smoulder there is less of
// it and it is paler. Less or paler smoke after shutting is no improvement: gas
// keeps coming off.
func TestFactShuttingTheOnlyPortChokes(t *testing.T) {
	b := light(t, box(t)).to(120)
	before := b.watch("port_lower_left", 5)
	b.set("port_lower_left", 0)
	early := b.watch("port_lower_left", 2)
	b.to(150)
	late := b.watch("port_lower_left", 5)
	t.Logf("heat release %.1f, %.1f, %.2f kW; flux %.2f, %.2f, %.3f m2/s; lightness %.2f, %.2f, %.2f; flame %.2f, %.2f, %.2f",
		before.kW, early.kW, late.kW, before.flux, early.flux, late.flux, before.lightness, early.lightness, late.lightness, before.flame, early.flame, late.flame)
	assert.Less(t, late.kW, 0.2*before.kW)
	assert.Less(t, late.flame, 0.1, "it smoulders")
	assert.Greater(t, late.lightness, before.lightness)
	assert.Less(t, late.flux, 0.3*before.flux)
	gas := 0.0
	for _, f := range b.Model().Fires {
		gas += f.Gas
	}
	assert.Positive(t, gas, "a smoulder is left")
}

func TestFactFlameOnLittleAirIsDarker(t *testing.T) {
	b := light(t, growing(t)).to(100)
	before := b.watch("port_lower_left", 4)
	b.set("port_lower_left", 0.2)
	b.watch("port_lower_left", 2)
	after := b.watch("port_lower_left", 4)
	t.Logf("heat release %.1f to %.1f kW, lightness %.2f to %.2f, density %.1f to %.1f /m, flame %.2f", before.kW, after.kW, before.lightness, after.lightness, before.density, after.density, after.flame)
	assert.Greater(t, after.flame, 0.5, "flame lasts")
	assert.Less(t, after.lightness, before.lightness-0.02)
	assert.Greater(t, after.density, 1.2*before.density)
}

// growing is a box with little fuel: its fire never wants for air.
func growing(t testing.TB) engine.Scenario {
	sc := box(t)
	sc.Fuels = []engine.Fuel{{ID: "strips", In: "lower_left", Kind: "softwood", MassKg: ptr(0.6), IgniteS: ptr(0)}}
	return sc
}

// steady is a box with a gas burner in place of solid fuel.
func steady(t testing.TB, kW float64) engine.Scenario {
	sc := box(t)
	sc.Fuels = []engine.Fuel{{ID: "burner", In: "lower_left", Kind: engine.GasBurner, HRRKW: [][2]float64{{0, kW}}}}
	return sc
}

// Opening again: a lag, a surge, a larger fire, then it settles. An ember, a
// pilot or hot gas must be left: none comes after long shutting.
func TestFactOpeningAgainSurges(t *testing.T) {
	b := light(t, box(t)).to(120)
	before := b.watch("port_lower_left", 5)
	b.set("port_lower_left", 0).to(145)
	shut := b.watch("port_lower_left", 1)
	start := b.TimeS()
	b.set("port_lower_left", 1)
	first := b.watch("port_lower_left", 0.4)
	surge := b.watch("port_lower_left", 30)
	b.to(215)
	after := b.watch("port_lower_left", 5)
	t.Logf("before %.1f, shut %.1f, at once %.1f, surge %.1f at %.1f s, settled %.1f kW", before.kW, shut.kW, first.kW, surge.most, surge.mostAt-start, after.kW)
	assert.Less(t, first.kW, 0.5*surge.most, "a lag")
	assert.Greater(t, surge.most, 1.1*before.kW)
	assert.Less(t, after.kW, surge.most)

	long := light(t, box(t)).to(120)
	long.set("port_lower_left", 0).to(1320)
	long.set("port_lower_left", 1)
	none := long.watch("port_lower_left", 60)
	t.Logf("after 20 min shut: %.2f kW at most", none.most)
	assert.Less(t, none.most, 0.1*before.kW)
}

// A port nearly shut: the plane drops and the smoke is faster. Holds where the
// fire wants for fuel, or in the first two seconds after.
func TestFactPortNearlyShut(t *testing.T) {
	b := light(t, growing(t)).to(60)
	before := b.watch("port_lower_left", 4)
	b.set("port_lower_left", 0.5)
	after := b.watch("port_lower_left", 4)
	t.Logf("plane %.3f to %.3f m, speed %.2f to %.2f m/s, heat release %.1f to %.1f kW", before.plane, after.plane, before.speed, after.speed, before.kW, after.kW)
	assert.Less(t, after.plane, before.plane)
	assert.Greater(t, after.speed, before.speed)

	full := light(t, box(t)).to(120)
	before = full.watch("port_lower_left", 2)
	full.set("port_lower_left", 0.25)
	after = full.watch("port_lower_left", 2)
	t.Logf("short of air, first 2 s: plane %.3f to %.3f m, speed %.2f to %.2f m/s", before.plane, after.plane, before.speed, after.speed)
}

// Polystyrene: darker, denser and more, where more is visible smoke and not gas.
func TestFactPolystyrene(t *testing.T) {
	b := light(t, box(t)).to(120)
	twin := b.twin()
	twin.add("polystyrene", 0.05)
	b.to(130)
	twin.to(130)
	wood, foam := b.watch("port_lower_left", 10), twin.watch("port_lower_left", 10)
	t.Logf("lightness %.2f to %.2f, density %.1f to %.1f /m, flux %.2f to %.2f m2/s", wood.lightness, foam.lightness, wood.density, foam.density, wood.flux, foam.flux)
	assert.Less(t, foam.lightness, wood.lightness)
	assert.Greater(t, foam.density, 1.5*wood.density)
	assert.Greater(t, foam.flux, 1.5*wood.flux)
}

// The neighbour's port and the inner door opened: the first port becomes mostly
// an outlet, the neighbour breathes both ways, and air runs low through the door
// toward the fire. Strong where the fire's port sits higher; here it does.
func TestFactNeighbourFeedsTheFire(t *testing.T) {
	sc := box(t)
	sc.Openings[0].SillM = 0.28
	b := light(t, sc).to(120)
	before := b.watch("port_lower_left", 5)
	b.set("port_lower_right", 1).set("door_lower", 1).to(140)
	after := b.watch("port_lower_left", 5)
	door, port := b.watch("door_lower", 2), b.watch("port_lower_right", 2)
	t.Logf("fire's port out %.1f to %.1f, in %.1f to %.1f g/s; neighbour's port in %.1f, out %.1f; air through the door %.1f g/s; fire %.1f to %.1f kW",
		before.out, after.out, before.in, after.in, port.in, port.out, door.in, before.kW, after.kW)
	assert.Greater(t, after.out/(after.out+after.in), before.out/(before.out+before.in)+0.05)
	assert.Greater(t, port.in, 0.0)
	assert.Greater(t, door.in, 5.0, "air low through the door")
	assert.Greater(t, after.kW, before.kW)
}

// Shutting the fire's own port moves burning to the neighbour, where the air is.
func TestFactFireGoesToTheAir(t *testing.T) {
	b := light(t, box(t)).to(110)
	b.set("port_lower_right", 1).set("door_lower", 1).to(130)
	before := b.watch("port_lower_left", 5)
	b.set("port_lower_left", 0)
	b.to(138)
	after := b.watch("port_lower_left", 10)
	share := func(s seen) float64 { return 1 - s.roomKW/s.kW }
	t.Logf("burning outside the fire's cell %.0f to %.0f %% of %.1f and %.1f kW", 100*share(before), 100*share(after), before.kW, after.kW)
	assert.Greater(t, share(after), share(before)+0.1)
}

// An upper port and the floor hole open: outlet above, inlet below; shutting the
// lower port slows the upper one. An outlet takes in less than a tenth of what it
// lets out; it does so where it is not much wider than the hole that feeds it.
func TestFactUpperPortAndFloorHole(t *testing.T) {
	b := light(t, steady(t, 15)).to(100)
	b.set("floor_hole", 1).set("port_upper_left", 0.4).to(160)
	lower, upper := b.watch("port_lower_left", 5), b.watch("port_upper_left", 5)
	b.set("port_lower_left", 0).to(185)
	shut := b.watch("port_upper_left", 5)
	b.set("port_lower_left", 1).to(240)
	again := b.watch("port_upper_left", 5)
	t.Logf("below in %.1f out %.1f g/s, above in %.1f out %.1f g/s; speed above %.2f, lower port shut %.2f, open again %.2f m/s",
		lower.in, lower.out, upper.in, upper.out, upper.speed, shut.speed, again.speed)
	assert.Greater(t, lower.in, lower.out, "inlet below")
	assert.Less(t, upper.in, 0.1*upper.out, "outlet above")
	assert.Less(t, shut.speed, 0.95*upper.speed)
	assert.Greater(t, again.speed, shut.speed)
}

// The roof hatch alone changes little; with the ceiling hatch under it smoke is
// faster and denser and the fire larger. Against an untouched twin; a shut hatch
// still leaks a little.
func TestFactRoofHatchNeedsTheCeilingHatch(t *testing.T) {
	path := func() *bench {
		return light(t, box(t)).to(90).set("floor_hole", 1).set("door_upper", 1).to(110)
	}
	twin, roof, both := path(), path(), path()
	roof.set("roof_hatch", 1)
	both.set("roof_hatch", 1).set("ceiling_hatch", 1)
	none := twin.to(130).watch("roof_hatch", 10)
	alone := roof.to(130).watch("roof_hatch", 10)
	through := both.to(130).watch("roof_hatch", 10)
	t.Logf("burning inside %.1f, roof hatch alone %.1f, both %.1f kW; roof speed %.2f and %.2f m/s, density %.2f and %.2f /m", none.insideKW, alone.insideKW, through.insideKW, alone.speed, through.speed, alone.density, through.density)
	assert.InEpsilon(t, none.insideKW, alone.insideKW, 0.05)
	assert.Greater(t, through.insideKW, 1.1*none.insideKW)
	assert.Greater(t, through.speed, alone.speed)
	assert.Greater(t, through.density, alone.density)
}

// Everything open is the largest fire.
func TestFactEverythingOpenIsLargest(t *testing.T) {
	sets := map[string][]string{
		"fire's port":     nil,
		"and the other":   {"port_lower_right", "door_lower"},
		"and the upper":   {"floor_hole", "port_upper_left"},
		"and the roof":    {"floor_hole", "door_upper", "ceiling_hatch", "roof_hatch"},
		"everything open": {"port_lower_right", "door_lower", "floor_hole", "port_upper_left", "port_upper_right", "door_upper", "ceiling_hatch", "roof_hatch"},
	}
	kW := map[string]float64{}
	for name, openings := range sets {
		b := light(t, box(t)).to(100)
		for _, o := range openings {
			b.set(o, 1)
		}
		kW[name] = b.to(120).watch("port_lower_left", 20).kW
	}
	for name, x := range kW {
		t.Logf("%-16s %.1f kW", name, x)
	}
	for name, x := range kW {
		if name != "everything open" {
			assert.Greater(t, kW["everything open"], x, name)
		}
	}
}

// A hot cell rich in fuel gas, opened: within 2 to 90 s a fire at least half as
// large again as before it was shut in.
func TestFactFuelRichCellOpened(t *testing.T) {
	b := light(t, box(t)).to(120)
	b.set("port_lower_left", 0).to(140)
	before := b.watch("port_lower_left", 5)
	start := b.TimeS()
	b.set("port_lower_left", 1)
	after := b.watch("port_lower_left", 90)
	t.Logf("heat release %.1f to %.1f kW after %.1f s", before.kW, after.most, after.mostAt-start)
	assert.Greater(t, after.most, 1.5*before.kW)
	assert.Greater(t, after.mostAt-start, 2.0)
	assert.Less(t, after.mostAt-start, 90.0)
}

// Venting without water does not cool a fire that wants for air; it does cool
// one that wants for fuel.
func TestFactVentingDoesNotCool(t *testing.T) {
	sc := box(t)
	sc.Openings[0].Open = ptr(0.4)
	twin := light(t, sc).to(150)
	vented := twin.twin()
	vented.set("port_lower_left", 1)
	unopened, opened := twin.to(208).watch("port_lower_left", 4), vented.to(208).watch("port_lower_left", 4)
	t.Logf("short of air: %.1f and %.1f kW, %.0f and %.0f C", unopened.kW, opened.kW, unopened.upperC, opened.upperC)
	assert.Greater(t, opened.kW, unopened.kW)
	assert.Greater(t, opened.upperC, unopened.upperC-5)

	few := steady(t, 8)
	few.Openings[0].Open = ptr(0.5)
	twin = light(t, few).to(120)
	vented = twin.twin()
	vented.set("port_lower_left", 1).set("door_lower", 1).set("port_lower_right", 1)
	unopened, opened = twin.to(180).watch("port_lower_left", 4), vented.to(180).watch("port_lower_left", 4)
	t.Logf("short of fuel: %.1f and %.1f kW, %.0f and %.0f C", unopened.kW, opened.kW, unopened.upperC, opened.upperC)
	assert.Less(t, opened.upperC, unopened.upperC-10)
}

// Water cools: water in the gas, steam that dilutes, wet fuel that gives off less.
func TestFactWaterCools(t *testing.T) {
	twin := light(t, box(t)).to(120)
	wet := twin.twin()
	wet.water(0.3)
	dry := twin.to(122).watch("port_lower_left", 4)
	cooled := wet.to(122).watch("port_lower_left", 4)
	t.Logf("heat release %.1f to %.1f kW, upper layer %.0f to %.0f C", dry.kW, cooled.kW, dry.upperC, cooled.upperC)
	assert.Less(t, cooled.kW, 0.8*dry.kW)
	assert.Less(t, cooled.upperC, dry.upperC-50)
}
