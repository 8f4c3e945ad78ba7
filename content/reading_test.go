package content_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/content"
	"lintel/content/wording"
	"lintel/engine"
	"lintel/engine/infer"
)

// read reads one look at some openings with the rules that ship.
func read(openings ...engine.Reading) engine.Finding {
	return said(engine.Readings{V: 1, Looks: []engine.Look{{Openings: openings}}})
}

// said is a reading in words.
func said(r engine.Readings) engine.Finding {
	f := infer.Read(content.Rules(), r)
	wording.Finding(&f)
	return f
}

func hazard(f engine.Finding, event engine.Hazard) engine.HazardFinding {
	for _, h := range f.Hazards {
		if h.Event == event {
			return h
		}
	}
	return engine.HazardFinding{}
}

// NFCC, "Understand signs and symptoms of flashover", indicator table row 1: slow,
// light smoke is an early fire or one far from the opening; IFE, "Reading of Fire
// Gases": it may be seepage from a closed room.
func TestLightSlowSmokeIsASet(t *testing.T) {
	f := read(engine.Reading{ID: "a", Kind: engine.SeenWindow, Volume: new(1), Velocity: new(1), Density: new(1), Darkness: new(2), Colour: engine.LightGrey})
	assert.Contains(t, f.Set, engine.Incipient)
	assert.Contains(t, f.Set, engine.Growth)
	assert.GreaterOrEqual(t, len(f.Set), 2)
}

// The same table, row 2, gives fast darkening smoke as a sign of flashover; the
// NFCC's backdraught list gives it as one of backdraught. Neither is left out.
func TestFastDarkSmokeIsListedForBoth(t *testing.T) {
	calm := read(engine.Reading{ID: "a", Velocity: new(1), Darkness: new(2)})
	f := read(engine.Reading{ID: "a", Velocity: new(4), Darkness: new(4), Density: new(4), Churning: new(true)})
	assert.Contains(t, hazard(f, engine.Flashover).Conditions, "smoke leaves fast and dark, as if under pressure")
	assert.Contains(t, hazard(f, engine.Backdraft).Conditions, "smoke leaves fast and dark, as if under pressure")
	assert.Greater(t, hazard(f, engine.Flashover).Probability, hazard(calm, engine.Flashover).Probability)
}

// Row 3: heavily darkened or crazed windows are under-ventilated, with backdraught
// or smoke explosion; row 4 and the backdraught list: pulsing dark smoke.
func TestStarvedSignsPointToTooLittleAir(t *testing.T) {
	f := read(engine.Reading{ID: "a", Kind: engine.SeenWindow, State: engine.StateClosed, Window: engine.GlassCrazed, Flame: engine.FlameNone})
	assert.Greater(t, f.Regime[engine.VentilationLimited], 0.5)
	assert.NotContains(t, hazard(f, engine.Backdraft).Conditions, wording.Say(infer.NoSign))
	assert.NotContains(t, hazard(f, engine.SmokeExplosion).Conditions, wording.Say(infer.NoSign))

	f = read(engine.Reading{ID: "a", Kind: engine.SeenCrack, Pulsing: new(true), Darkness: new(4)})
	assert.Greater(t, f.Regime[engine.VentilationLimited], 0.5)
	assert.Contains(t, hazard(f, engine.Backdraft).Conditions, "smoke pulses in and out")
}

// Seven controlled fires with limited air gave no backdraught and one smoke
// explosion (University of Canterbury, 1995): every sign together is still no
// certainty.
func TestNoHazardIsEverCertain(t *testing.T) {
	f := read(
		engine.Reading{ID: "a", Kind: engine.SeenWindow, State: engine.StateClosed, Window: engine.GlassStained, Pulsing: new(true), Churning: new(true), Flow: engine.FlowBoth, Darkness: new(4), Density: new(4), Volume: new(4), Velocity: new(4), Colour: engine.YellowGrey, Flame: engine.FlameTongues},
		engine.Reading{ID: "b", Kind: engine.SeenCrack, Flow: engine.FlowIn, Pulsing: new(true), Darkness: new(4)},
	)
	for _, h := range f.Hazards {
		assert.Less(t, h.Probability, 0.999, h.Event)
	}
}

// UL, two-storey house, 500 kW: with only the upstairs window open the lower
// storey stood 6 to 9 Pa below outside and drew air through any low opening, while
// upstairs smoke left at the top (public pressure data).
func TestTwoStoreyFlowPathRunsFromLowToHigh(t *testing.T) {
	f := read(
		engine.Reading{ID: "front_door", Floor: new(1), Kind: engine.SeenDoor, State: engine.StateOpen, Flow: engine.FlowIn, Volume: new(0)},
		engine.Reading{ID: "upstairs_window", Floor: new(2), Kind: engine.SeenWindow, State: engine.StateOpen, Flow: engine.FlowOut, Volume: new(3), Velocity: new(3)},
	)
	assert.Equal(t, []string{"front_door", "upstairs_window"}, f.Path)
	assert.NotEmpty(t, f.PathNote, "without a plan it says so")
	assert.Equal(t, engine.RoleIn, f.Openings["front_door"].Role)
	assert.Contains(t, strings.Join(f.Cautions, " "), "low inlet to a high outlet")
}

// Fatality investigations F2007-18 and F2007-32: no smoke at the entrance while
// fire burned unseen. Nothing showing is a set, and no hazard is ruled out.
func TestNothingShowingIsNotNothing(t *testing.T) {
	f := read(engine.Reading{ID: "a", Kind: engine.SeenDoor, Volume: new(0)})
	assert.Subset(t, f.Set, []engine.Stage{engine.Incipient, engine.VentilationDecay})
	assert.Contains(t, strings.Join(f.Cautions, " "), "not nothing")
	for _, h := range f.Hazards {
		assert.Positive(t, h.Probability, h.Event)
		assert.False(t, h.Flagged && len(h.Conditions) == 0)
	}
}

// Steam vanishes and smoke does not (ARIA; a municipal fire service's winter note).
func TestSteamIsToldFromPaleSmoke(t *testing.T) {
	pale := engine.Reading{ID: "a", Colour: engine.White, Darkness: new(1), Density: new(3), Velocity: new(3), Volume: new(3)}
	smoke, steam := pale, pale
	smoke.Vanishes, steam.Vanishes = new(false), new(true)
	fired := func(r engine.Reading) []string {
		return content.Rules().Fired(engine.Readings{V: 1, Looks: []engine.Look{{Openings: []engine.Reading{r}}}})
	}
	assert.Contains(t, fired(smoke), "pale-thick-fast")
	assert.NotContains(t, fired(steam), "pale-thick-fast")
	assert.Contains(t, fired(steam), "vanishing-white")
}

// UL, 2010: less smoke from a closed house can be a fire short of air. It is never
// called better without water.
func TestLessSmokeWithoutWaterIsNotImprovement(t *testing.T) {
	at := func(volume, velocity int) engine.Look {
		return engine.Look{Openings: []engine.Reading{{ID: "a", Kind: engine.SeenDoor, State: engine.StateClosed, Volume: &volume, Velocity: &velocity}}}
	}
	f := said(engine.Readings{V: 1, Looks: []engine.Look{at(4, 4), at(2, 1)}})
	assert.NotEqual(t, infer.Better, f.Trend)
	assert.Contains(t, strings.Join(f.Cautions, " "), "not improvement")
}

// NIST TN 1618 and 1629: wind changes every reading. The same look is worth less.
func TestWindLeavesMoreUndetermined(t *testing.T) {
	look := engine.Look{Openings: []engine.Reading{{ID: "a", Side: engine.Charlie, Volume: new(3), Velocity: new(3), Density: new(3), Darkness: new(3)}}}
	still := infer.Read(content.Rules(), engine.Readings{V: 1, Looks: []engine.Look{look}})
	look.Wind = &engine.Wind{MS: new(7.0), From: engine.Alpha}
	windy := infer.Read(content.Rules(), engine.Readings{V: 1, Looks: []engine.Look{look}})
	assert.Greater(t, windy.Stage[engine.Undetermined], still.Stage[engine.Undetermined])
	assert.NotEmpty(t, windy.Cautions)
}

// Colour must not be the only indicator (Swedish Rescue Services Agency, Enclosure
// Fires, p. 137): alone it moves no stage to the top by much and flags nothing.
func TestColourAloneDecidesNothing(t *testing.T) {
	for _, colour := range engine.Colours {
		f := read(engine.Reading{ID: "a", Colour: colour})
		require.Greater(t, len(f.Set), 2, colour)
		for _, h := range f.Hazards {
			assert.False(t, h.Flagged, "%s flags %s", colour, h.Event)
		}
	}
}
