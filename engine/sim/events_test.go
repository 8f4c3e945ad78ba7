package sim_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/engine"
	"lintel/engine/sim"
)

// kinds are the kinds of event noted so far, in order, each once.
func (b *bench) kinds() []string {
	var list []string
	for _, e := range b.Events() {
		if !contains(list, e.Kind) {
			list = append(list, e.Kind)
		}
	}
	return list
}

func contains(list []string, word string) bool {
	for _, w := range list {
		if w == word {
			return true
		}
	}
	return false
}

// A cell that flashes over, is shut in and opened again shows, each with its
// time, place and cause: flashover, backdraft conditions, re-growth, and a
// flashover that the opening brought about.
func TestEventsOfACellShutInAndOpened(t *testing.T) {
	b := light(t, box(t)).to(120)
	assert.Equal(t, []string{string(engine.Flashover)}, b.kinds())
	b.set("port_lower_left", 0).to(145)
	assert.Contains(t, b.kinds(), string(engine.Backdraft)+"_conditions")
	b.set("port_lower_left", 1).to(175)
	kinds := b.kinds()
	assert.Contains(t, kinds, sim.Regrowth)
	assert.Contains(t, kinds, string(engine.VentilationFlashover))
	for _, e := range b.Events() {
		t.Logf("%.1f s %s in %s: %s", e.TS, e.Kind, e.Where, e.Cause)
		assert.NotEmpty(t, e.Where)
		assert.NotEmpty(t, e.Cause)
	}
	last := b.Events()[len(b.Events())-1]
	assert.Contains(t, last.Cause, "cause/opened|s=4|opening=@opening/port_lower_left")
}

func TestEventsOfAFireThatGoesOut(t *testing.T) {
	sc := steady(t, 15)
	sc.Openings[0].Open = ptr(0)
	b := light(t, sc).to(300)
	require.Contains(t, b.kinds(), sim.Extinction)
	assert.Contains(t, b.Events()[len(b.Events())-1].Cause, "oxygen")

	wet := light(t, box(t)).to(120)
	wet.water(3).to(126)
	wet.water(3).to(132)
	wet.water(3).to(180)
	assert.Contains(t, wet.kinds(), sim.Extinction)
	assert.Equal(t, engine.AfterKnockDown, wet.Stage())
}

// Gas of a smouldering room that leaks into a cooler one and mixes with its air
// comes into the range in which it would burn: that is flagged before anything
// happens, and a flame in it fires it.
func TestEventsOfMixedSmokeGas(t *testing.T) {
	sc := room(1)
	sc.Openings[0].Open = ptr(0)
	sc.Compartments[0].Initial = &engine.Initial{UpperC: ptr(120), InterfaceM: ptr(0.4), O2: ptr(0.18), FuelGas: ptr(0.14)}
	sc.Fuels[0].HRRKW = [][2]float64{{30, 20}}
	b := light(t, sc).to(20)
	require.Contains(t, b.kinds(), string(engine.SmokeExplosion)+"_conditions")
	b.to(60)
	for _, e := range b.Events() {
		t.Logf("%.1f s %s in %s: %s", e.TS, e.Kind, e.Where, e.Cause)
	}
	assert.Contains(t, b.kinds(), string(engine.SmokeExplosion))
}

// A fire that swings between two cells is not ten flashovers: a room is told of
// anew only after it was out of it, one opening is named once in a room, and
// only where the fire's rise followed on it.
func TestEventsOfASwingingFireAreFew(t *testing.T) {
	for _, kg := range []float64{1.2, 3} {
		sc := box(t)
		sc.Fuels[len(sc.Fuels)-1].MassKg = &kg
		b := light(t, sc).to(125)
		b.set("floor_hole", 1).set("port_upper_left", 1).to(480)
		last, blamed := map[string]float64{}, map[string]int{}
		for _, e := range b.Events() {
			t.Logf("%.1f s %s in %s: %s", e.TS, e.Kind, e.Where, e.Cause)
			switch e.Kind {
			case string(engine.VentilationFlashover):
				blamed[e.Where]++
				assert.Less(t, e.TS, 125+0.5*180, "half of three minutes in a cell of a quarter of the height")
			case string(engine.Flashover):
			default:
				continue
			}
			if before, told := last[e.Where]; told {
				assert.Greater(t, e.TS-before, 15.0, "half of half a minute")
			}
			last[e.Where] = e.TS
		}
		require.NotEmpty(t, blamed)
		for room, times := range blamed {
			assert.Equal(t, 1, times, room)
		}
		assert.Less(t, len(b.Events()), 8)
	}
}

// Water is still known a little later, and long after it is not.
func TestReadingsRememberWater(t *testing.T) {
	wet := func(b *bench) bool { return *b.Readings().Looks[0].Water }
	b := light(t, box(t)).to(60)
	assert.False(t, wet(b))
	b.water(0.2).to(85)
	assert.True(t, wet(b))
	assert.False(t, wet(b.to(150)))
}

// Water on a fire that has burned out knocks nothing down.
func TestWaterOnAshes(t *testing.T) {
	small := 0.03
	sc := box(t)
	sc.Fuels = sc.Fuels[:1]
	sc.Fuels[0].MassKg = &small
	b := light(t, sc).to(400)
	require.Less(t, b.Model().HRR, 100.0)
	before := b.Stage()
	b.water(0.1).to(430)
	assert.Equal(t, before, b.Stage())
	assert.NotEqual(t, engine.AfterKnockDown, b.Stage())
}

// An opening made while the room is out of it brings a flashover of its own,
// however short the time since the last.
func TestEventsOfABriefShutting(t *testing.T) {
	b := light(t, box(t)).to(120)
	b.set("port_lower_left", 0).to(133)
	before := len(b.Events())
	b.set("port_lower_left", 1).to(150)
	var kinds []string
	for _, e := range b.Events()[before:] {
		t.Logf("%.1f s %s in %s: %s", e.TS, e.Kind, e.Where, e.Cause)
		kinds = append(kinds, e.Kind)
	}
	assert.Contains(t, kinds, sim.Regrowth)
	assert.Contains(t, kinds, string(engine.VentilationFlashover))
}
