package sim_test

import (
	"github.com/stretchr/testify/assert"
)

// An outlet takes in less than a tenth of what it lets out.
func boxUpperPort(f *fact) {
	b := light(f, steady(f, 15)).to(100)
	b.set("floor_hole", 1).set("port_upper_left", 0.4).to(160)
	lower, upper := b.watch("port_lower_left", 5), b.watch("port_upper_left", 5)
	b.set("port_lower_left", 0).to(185)
	shut := b.watch("port_upper_left", 5)
	b.set("port_lower_left", 1).to(240)
	again := b.watch("port_upper_left", 5)
	f.table("Holds where the outlet is not much wider than the hole that feeds it: the upper port stands 40 % open over a steady burner.", "lower port open", "shut", "open again")
	f.row("upper port: speed, m/s", upper.speed, shut.speed, again.speed)
	f.row("upper port: out, g/s", upper.out, shut.out, again.out)
	f.row("upper port: in, g/s", upper.in, shut.in, again.in)
	f.row("lower port: in less out, g/s", lower.in-lower.out, 0, 0)
	assert.Greater(f, lower.in, lower.out, "inlet below")
	assert.Less(f, upper.in, 0.1*upper.out, "outlet above")
	assert.Less(f, shut.speed, 0.95*upper.speed)
	assert.Greater(f, again.speed, shut.speed)
}

func boxRoofHatch(f *fact) {
	path := func() *bench {
		return light(f, box(f)).to(90).set("floor_hole", 1).set("door_upper", 1).to(110)
	}
	twin, roof, both := path(), path(), path()
	roof.set("roof_hatch", 1)
	both.set("roof_hatch", 1).set("ceiling_hatch", 1)
	none := twin.to(130).watch("roof_hatch", 10)
	alone := roof.to(130).watch("roof_hatch", 10)
	through := both.to(130).watch("roof_hatch", 10)
	f.table("Against an untouched twin; a shut hatch still leaks a little.", "both shut", "roof hatch alone", "both open")
	f.row("burning inside, kW", none.insideKW, alone.insideKW, through.insideKW)
	f.row("speed at the roof, m/s", none.speed, alone.speed, through.speed)
	f.row("density K at the roof, 1/m", none.density, alone.density, through.density)
	assert.InEpsilon(f, none.insideKW, alone.insideKW, 0.05)
	assert.Greater(f, through.insideKW, 1.1*none.insideKW)
	assert.Greater(f, through.speed, alone.speed)
	assert.Greater(f, through.density, alone.density)
}

func boxEverythingOpen(f *fact) {
	sets := [][]string{
		nil,
		{"port_lower_right", "door_lower"},
		{"floor_hole", "port_upper_left"},
		{"floor_hole", "door_upper", "ceiling_hatch", "roof_hatch"},
		{"port_lower_right", "door_lower", "floor_hole", "port_upper_left", "port_upper_right", "door_upper", "ceiling_hatch", "roof_hatch"},
	}
	var kW []float64
	for _, openings := range sets {
		b := light(f, box(f)).to(100)
		for _, o := range openings {
			b.set(o, 1)
		}
		kW = append(kW, b.to(120).watch("port_lower_left", 20).kW)
	}
	f.table("Each from the same fire, looked at 20 s after the opening.", "fire's port", "and the neighbour", "and the upper port", "and the roof", "everything")
	f.row("heat release, kW", kW...)
	for _, x := range kW[:len(kW)-1] {
		assert.Greater(f, kW[len(kW)-1], x)
	}
}

// Within 2 to 90 s a fire at least half as large again as before it was shut in.
func boxFuelRich(f *fact) {
	b := light(f, box(f)).to(120)
	b.set("port_lower_left", 0).to(140)
	before := b.watch("port_lower_left", 5)
	start := b.TimeS()
	b.set("port_lower_left", 1)
	after := b.watch("port_lower_left", 90)
	f.table("Holds for a hot cell that is rich in fuel gas.", "shut", "peak after opening", "seconds to the peak")
	f.row("heat release, kW", before.kW, after.most, after.mostAt-start)
	assert.Greater(f, after.most, 1.5*before.kW)
	assert.Greater(f, after.mostAt-start, 2.0)
	assert.Less(f, after.mostAt-start, 90.0)
}

// It does cool a fire that wants for fuel.
func boxVenting(f *fact) {
	sc := box(f)
	sc.Openings[0].Open = ptr(0.4)
	twin := light(f, sc).to(150)
	vented := twin.twin()
	vented.set("port_lower_left", 1)
	unopened, opened := twin.to(208).watch("port_lower_left", 4), vented.to(208).watch("port_lower_left", 4)

	few := steady(f, 8)
	few.Openings[0].Open = ptr(0.5)
	twin = light(f, few).to(120)
	vented = twin.twin()
	vented.set("port_lower_left", 1).set("door_lower", 1).set("port_lower_right", 1)
	was, is := twin.to(180).watch("port_lower_left", 4), vented.to(180).watch("port_lower_left", 4)
	f.table("A minute after opening, against the unopened twin. A fire that wants for fuel does cool.", "short of air, unopened", "opened", "short of fuel, unopened", "opened")
	f.row("heat release, kW", unopened.kW, opened.kW, was.kW, is.kW)
	f.row("upper layer, °C", unopened.upperC, opened.upperC, was.upperC, is.upperC)
	assert.Greater(f, opened.kW, unopened.kW)
	assert.Greater(f, opened.upperC, unopened.upperC-5)
	assert.Less(f, is.upperC, was.upperC-10)
}

func boxWater(f *fact) {
	twin := light(f, box(f)).to(120)
	wet := twin.twin()
	wet.water(0.3)
	dry := twin.to(122).watch("port_lower_left", 4)
	cooled := wet.to(122).watch("port_lower_left", 4)
	f.table("0.3 litre on the fire: water in the gas, steam that dilutes, wet fuel that gives off less; 2 to 6 s on, against a dry twin.", "dry", "with water")
	f.row("heat release, kW", dry.kW, cooled.kW)
	f.row("upper layer, °C", dry.upperC, cooled.upperC)
	assert.Less(f, cooled.kW, 0.8*dry.kW)
	assert.Less(f, cooled.upperC, dry.upperC-50)
}
