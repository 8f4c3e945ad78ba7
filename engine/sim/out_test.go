package sim_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/engine"
	"lintel/engine/sim"
)

// outcome is the cause of the first extinction of a run.
func (b *bench) outcome() string {
	for _, e := range b.Events() {
		if e.Kind == sim.Extinction {
			return e.Cause
		}
	}
	return ""
}

// shutIn is a room behind its shut door with a sofa and a usual leak. Invented.
func shutIn() engine.Scenario {
	sc := furnished("gypsum")
	sc.Fuels = sc.Fuels[:1]
	sc.Fuels[0].MassKg = ptr(80)
	sc.Compartments[0].HeightM, sc.Compartments[0].LeakM2 = 2.5, ptr(0.05)
	sc.Openings[0].Open = ptr(0)
	return sc
}

// A fire that its shut room has choked stays short of air for as long as it is out
// and the room is vitiated: while its embers glow and gas gathers it is never said to
// want for fuel, which is what a fire does that is burning itself out.
func TestAChokedFireIsShortOfAirUntilItBurnsAgain(t *testing.T) {
	b := light(t, shutIn()).to(320)
	require.Contains(t, b.outcome(), "cause/oxygen/")
	out := 0
	for at := 320.0; at < 1800; at += 5 {
		b.to(at)
		m := b.Model()
		if m.HRR > 1000 || m.Rooms[0].Gas[0].OxygenMoles() > 0.149 {
			continue
		}
		out++
		require.True(t, m.FuelLeft())
		require.Equal(t, engine.VentilationLimited, b.Regime(), "%.0f s", at)
		require.Equal(t, engine.VentilationDecay, b.Stage(), "%.0f s", at)
	}
	assert.Greater(t, out, 100, "it is out most of the time")
}

// What has burned up is short of nothing: foam that melts leaves nothing behind, and
// the room is full of air again.
func TestASpentFireIsShortOfNothing(t *testing.T) {
	sc := furnished("gypsum")
	sc.Fuels = []engine.Fuel{{ID: "foam", In: "room", Kind: "polystyrene", MassKg: ptr(40), IgniteS: ptr(0)}}
	b := light(t, sc).to(400)
	assert.Equal(t, "cause/fuel_spent", b.outcome())
	assert.Greater(t, b.Model().Rooms[0].Gas[0].OxygenMoles(), 0.2)
	assert.Equal(t, engine.FuelLimited, b.Regime())
	assert.Equal(t, engine.Decay, b.Stage())
}

// The cause of an extinction is one that can be: no flame dies of a fifth of oxygen,
// no burner is used up, and a cup of water is more than none.
func TestCausesOfExtinction(t *testing.T) {
	burner := steady(t, 15)
	burner.Fuels[0].HRRKW = [][2]float64{{0, 15}, {60, 15}, {61, 0}}
	assert.Equal(t, "cause/burner_off", light(t, burner).to(200).outcome())

	hall := furnished("concrete")
	hall.Compartments[0].WidthM, hall.Compartments[0].DepthM, hall.Compartments[0].HeightM = 30, 30, 6
	hall.Openings[0].WidthM, hall.Openings[0].HeightM = 4, 4
	hall.Fuels[0].MassKg = ptr(2000)
	hall.Fuels = hall.Fuels[:1]
	cause := light(t, hall).to(900).outcome()
	assert.True(t, cause == "" || strings.HasPrefix(cause, "cause/oxygen/upper|"), cause)

	wet := light(t, box(t)).to(120)
	wet.water(1.2).to(126).water(1.2).to(132).water(1.2).to(180)
	assert.Regexp(t, `^cause/water\|water=@litres/[1-3]\.[246]$`, wet.outcome())
}

// Conditions for a backdraft are told of as they are: a fire that still burns below
// the gas is not called none.
func TestBackdraftConditionsSayWhatStillBurns(t *testing.T) {
	sc := furnished("gypsum")
	sc.Fuels = sc.Fuels[:1]
	sc.Fuels[0].MassKg = ptr(80)
	b := light(t, sc).to(200)
	b.set("door", 0)
	for at := 200.2; !contains(b.kinds(), string(engine.Backdraft)+"_conditions"); at += 0.2 {
		require.Less(t, at, 300.0, "no conditions for a backdraft in a shut room")
		b.to(at)
	}
	last := b.Events()[len(b.Events())-1]
	t.Logf("%.1f s: %s; %.0f kW", last.TS, last.Cause, b.Model().HRR/1000)
	require.Greater(t, b.Model().HRR, 10e3)
	assert.Regexp(t, `^cause/starved_gas/burning\|.*\|kw=[1-9][0-9]+$`, last.Cause)
}
