package content_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/content"
	"lintel/engine"
	"lintel/engine/infer"
)

// frontDoor is a door that was just opened and lets thick, black, churning smoke
// out above and air in below.
func frontDoor() engine.Reading {
	return engine.Reading{
		ID: "front_door", Side: engine.Alpha, Floor: new(1), Kind: engine.SeenDoor, State: engine.StateOpen, Flow: engine.FlowBoth,
		Volume: new(3), Velocity: new(3), Density: new(4), Darkness: new(4), Colour: engine.Black, Churning: new(true),
		Pulsing: new(false), Vanishes: new(false), Flame: engine.FlameNone, NeutralPlane: new(0.4),
	}
}

// quietDoor lets a moderate amount of grey smoke out, without force.
func quietDoor() engine.Reading {
	r := frontDoor()
	r.Volume, r.Velocity, r.Density, r.Darkness = new(2), new(2), new(2), new(2)
	r.Colour, r.Churning, r.NeutralPlane = engine.Grey, new(false), new(0.55)
	return r
}

// settings put one opening into a building: alone, in wind, just opened, seen in
// part, and beside others.
var settings = map[string]func(engine.Reading) engine.Readings{
	"alone":      func(o engine.Reading) engine.Readings { return look(engine.Look{}, o) },
	"windward":   func(o engine.Reading) engine.Readings { return look(wind(engine.Alpha), o) },
	"cross wind": func(o engine.Reading) engine.Readings { return look(wind(engine.Bravo), o) },
	"just opened": func(o engine.Reading) engine.Readings {
		return look(engine.Look{Changes: []engine.Change{{Opening: o.ID, State: engine.StateOpen}}}, o)
	},
	"flow not seen": func(o engine.Reading) engine.Readings {
		o.Flow, o.NeutralPlane = "", nil
		return look(engine.Look{}, o)
	},
	"beside others": func(o engine.Reading) engine.Readings {
		return look(engine.Look{}, o,
			engine.Reading{ID: "b", Side: engine.Bravo, Floor: new(1), Kind: engine.SeenWindow, State: engine.StateClosed, Volume: new(1), Velocity: new(1), Density: new(1), Darkness: new(2), Flow: engine.FlowOut},
			engine.Reading{ID: "c", Side: engine.Charlie, Floor: new(2), Kind: engine.SeenWindow, State: engine.StateOpen, Volume: new(2), Velocity: new(2), Density: new(2), Darkness: new(2), Flow: engine.FlowOut})
	},
}

func look(l engine.Look, openings ...engine.Reading) engine.Readings {
	l.Openings = openings
	return engine.Readings{V: 1, Looks: []engine.Look{l}}
}

func wind(from engine.Side) engine.Look {
	return engine.Look{Wind: &engine.Wind{MS: new(3.0), From: from}}
}

// share sums what is read for some stages.
func share(f engine.Finding, stages ...engine.Stage) float64 {
	sum := 0.0
	for _, s := range stages {
		sum += f.Stage[s]
	}
	return sum
}

// beforeOverDecay is pre-flashover's part of what it and decay share.
func beforeOverDecay(f engine.Finding) float64 {
	return f.Stage[engine.PreFlashover] / share(f, engine.PreFlashover, engine.Decay)
}

// slack allows for weights that were rounded.
const slack = 0.002

// What must rise, or must not, as one thing about an opening changes. Each row
// stands in every setting.
func TestReadingsMoveTheWayTheTradeSays(t *testing.T) {
	hot := []engine.Stage{engine.PreFlashover, engine.FullyDeveloped}
	rows := map[string]struct {
		from   func() engine.Reading
		change func(*engine.Reading)
		rises  func(engine.Finding) float64
	}{
		// NFCC, "Understand signs and symptoms of flashover", indicator table: smoke
		// that grows faster and darker is the outside sign of flashover near.
		"faster and darker raises flashover":                          {quietDoor, func(o *engine.Reading) { o.Velocity, o.Darkness = new(4), new(4) }, func(f engine.Finding) float64 { return hazard(f, engine.Flashover).Probability }},
		"faster and darker lets decay fall behind pre-flashover":      {quietDoor, func(o *engine.Reading) { o.Velocity, o.Darkness = new(4), new(4) }, beforeOverDecay},
		"faster and darker lets knock-down fall behind pre-flashover": {quietDoor, func(o *engine.Reading) { o.Velocity, o.Darkness = new(4), new(4) }, func(f engine.Finding) float64 { return f.Stage[engine.PreFlashover] - f.Stage[engine.AfterKnockDown] }},
		"from pushed to driven lets decay fall behind pre-flashover":  {frontDoor, func(o *engine.Reading) { o.Volume, o.Velocity = new(4), new(4) }, beforeOverDecay},
		"from pushed to driven raises no decay":                       {frontDoor, func(o *engine.Reading) { o.Volume, o.Velocity = new(4), new(4) }, func(f engine.Finding) float64 { return -share(f, engine.Decay) }},
		"from pushed to driven raises what stands round flashover":    {frontDoor, func(o *engine.Reading) { o.Volume, o.Velocity = new(4), new(4) }, func(f engine.Finding) float64 { return share(f, hot...) }},
		// Common practice (no source): churning shows heat that the room no longer absorbs.
		"churning raises what stands round flashover":   {func() engine.Reading { o := frontDoor(); o.Churning = new(false); return o }, func(o *engine.Reading) { o.Churning = new(true) }, func(f engine.Finding) float64 { return share(f, hot...) }},
		"churning lets decay fall behind pre-flashover": {func() engine.Reading { o := frontDoor(); o.Churning = new(false); return o }, func(o *engine.Reading) { o.Churning = new(true) }, beforeOverDecay},
		// NFCC, both lists: tongues of flame in the smoke.
		"tongues of flame raise flashover":                     {frontDoor, func(o *engine.Reading) { o.Flame = engine.FlameTongues }, func(f engine.Finding) float64 { return hazard(f, engine.Flashover).Probability }},
		"tongues of flame raise backdraft":                     {frontDoor, func(o *engine.Reading) { o.Flame = engine.FlameTongues }, func(f engine.Finding) float64 { return hazard(f, engine.Backdraft).Probability }},
		"tongues of flame let decay fall behind pre-flashover": {frontDoor, func(o *engine.Reading) { o.Flame = engine.FlameTongues }, beforeOverDecay},
		// NFCC, backdraught list: pulsing smoke.
		"pulsing raises backdraft":   {frontDoor, func(o *engine.Reading) { o.Pulsing = new(true) }, func(f engine.Finding) float64 { return hazard(f, engine.Backdraft).Probability }},
		"pulsing raises want of air": {frontDoor, func(o *engine.Reading) { o.Pulsing = new(true) }, func(f engine.Finding) float64 { return f.Regime[engine.VentilationLimited] }},
		// The same lists, row 3: heavily darkened or crazed windows are under-ventilated.
		"stained glass raises want of air": {func() engine.Reading {
			o := quietDoor()
			o.Kind, o.State, o.Window = engine.SeenWindow, engine.StateClosed, engine.GlassClear
			return o
		}, func(o *engine.Reading) { o.Window = engine.GlassStained }, func(f engine.Finding) float64 { return f.Regime[engine.VentilationLimited] }},
		// Common practice (no source): thick dark smoke holds unburned fuel.
		"thick and dark raises want of air": {quietDoor, func(o *engine.Reading) { o.Density, o.Darkness = new(4), new(4) }, func(f engine.Finding) float64 { return f.Regime[engine.VentilationLimited] }},
	}
	for name, row := range rows {
		for where, setting := range settings {
			before, after := row.from(), row.from()
			row.change(&after)
			was, is := row.rises(infer.Read(content.Rules(), setting(before))), row.rises(infer.Read(content.Rules(), setting(after)))
			assert.GreaterOrEqual(t, is, was-slack, "%s, %s", name, where)
		}
	}
}

// NFCC's tables list every one of these cues for flashover or for a fire short of
// air, and none for a fire that burns down for want of fuel.
func TestABlackPushedChurningDoorIsNoFireDyingDown(t *testing.T) {
	for _, setting := range []string{"alone", "windward", "cross wind", "just opened"} {
		f := infer.Read(content.Rules(), settings[setting](frontDoor()))
		listed := share(f, engine.PreFlashover, engine.FullyDeveloped, engine.VentilationDecay)
		assert.Greater(t, listed, 2*share(f, engine.Growth, engine.Decay), setting)
		assert.Greater(t, f.Regime[engine.VentilationLimited], 0.5, setting)
		require.NotEmpty(t, f.Set)
		assert.False(t, slices.Equal(f.Set, []engine.Stage{engine.Decay}))
		assert.True(t, hazard(f, engine.Flashover).Flagged, setting)
	}
}

// NIST TN 1618 and 1629: wind makes every reading worth less; it is no sign of a
// smaller fire.
func TestWindMakesNoFireSmaller(t *testing.T) {
	still := infer.Read(content.Rules(), settings["alone"](frontDoor()))
	for _, from := range []string{"windward", "cross wind"} {
		windy := infer.Read(content.Rules(), settings[from](frontDoor()))
		assert.LessOrEqual(t, share(windy, engine.Growth, engine.Decay), share(still, engine.Growth, engine.Decay)+0.05, from)
	}
}

// UL, 2010: opening a door on a fire short of air feeds it.
func TestADoorJustOpenedSpeaksForWantOfAir(t *testing.T) {
	was, is := infer.Read(content.Rules(), settings["alone"](frontDoor())), infer.Read(content.Rules(), settings["just opened"](frontDoor()))
	assert.Greater(t, is.Regime[engine.VentilationLimited], was.Regime[engine.VentilationLimited])
	assert.Greater(t, hazard(is, engine.VentilationFlashover).Probability, hazard(was, engine.VentilationFlashover).Probability)
}
