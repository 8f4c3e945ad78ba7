package content_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"

	"lintel/content"
	"lintel/engine"
)

// paleDoor is a door that lets thick pale smoke out above and air in below.
func paleDoor() engine.Reading {
	return engine.Reading{
		ID: "front_door", Side: engine.Alpha, Floor: new(1), Kind: engine.SeenDoor, State: engine.StateOpen, Flow: engine.FlowBoth,
		Volume: new(3), Velocity: new(2), Density: new(3), Darkness: new(2),
	}
}

// NFPA 1700 and ISO 13943 have backdraft as the burning of what a confined space
// short of oxygen gathered, once air comes in; NFCC's list begins with a tightly
// closed building. A door that has long let air in beside thick smoke is neither,
// however pale, thick or slow that smoke is.
func TestADoorThatBreathesFlagsNoBackdraft(t *testing.T) {
	for _, darkness := range []int{1, 2} {
		for _, density := range []int{3, 4} {
			for _, velocity := range []int{1, 2, 3} {
				for _, volume := range []int{2, 3, 4} {
					o := paleDoor()
					o.Volume, o.Velocity, o.Density, o.Darkness = &volume, &velocity, &density, &darkness
					alone := hazard(read(o), engine.Backdraft)
					assert.False(t, alone.Flagged, "volume %d velocity %d density %d darkness %d: %v", volume, velocity, density, darkness, alone.Conditions)
					o.Pulsing, o.Churning, o.Vanishes, o.Flame, o.Colour = new(false), new(false), new(false), engine.FlameNone, engine.YellowGrey
					rated := hazard(read(o), engine.Backdraft)
					assert.False(t, rated.Flagged, "all rated, volume %d velocity %d density %d darkness %d: %v", volume, velocity, density, darkness, rated.Conditions)
				}
			}
		}
	}
}

// The same door speaks for backdraft where its air is new or in doubt: a room short of
// air that was just opened breathes both ways too before its gas burns.
func TestTheSameDoorSpeaksForBackdraftWhereItsAirIsInDoubt(t *testing.T) {
	inDoubt := map[string]func() engine.Readings{
		"just opened": func() engine.Readings {
			return look(engine.Look{Changes: []engine.Change{{Opening: "front_door", State: engine.StateOpen}}}, paleDoor())
		},
		"shut at the look before": func() engine.Readings {
			r := look(engine.Look{}, paleDoor())
			before := engine.Look{Openings: []engine.Reading{{ID: "front_door", State: engine.StateClosed}}}
			r.Looks = append([]engine.Look{before}, r.Looks...)
			return r
		},
		"it pulses": func() engine.Readings {
			o := paleDoor()
			o.Pulsing = new(true)
			return look(engine.Look{}, o)
		},
		"it stands shut": func() engine.Readings {
			o := paleDoor()
			o.State = engine.StateClosed
			return look(engine.Look{}, o)
		},
		"which way it goes was not seen": func() engine.Readings {
			o := paleDoor()
			o.Flow = ""
			return look(engine.Look{}, o)
		},
	}
	for name, readings := range inDoubt {
		f := hazard(said(readings()), engine.Backdraft)
		assert.Contains(t, f.Conditions, "pale thick smoke shows where no settled two-way flow was seen", name)
		assert.Greater(t, f.Probability, hazard(read(paleDoor()), engine.Backdraft).Probability, name)
	}
}

// What parts backdraft from flashover is air: the signs that NFCC lists for both
// speak for flashover alone at a door that has long let air in.
func TestSignsListedForBothArePartedByAir(t *testing.T) {
	signs := map[string]func(*engine.Reading){
		"smoke leaves fast and dark, as if under pressure": func(o *engine.Reading) { o.Velocity, o.Darkness = new(4), new(4) },
		"tongues of flame show in the smoke":               func(o *engine.Reading) { o.Flame = engine.FlameTongues },
	}
	for sign, show := range signs {
		o := paleDoor()
		show(&o)
		f := read(o)
		assert.Contains(t, hazard(f, engine.Flashover).Conditions, sign)
		assert.NotContains(t, hazard(f, engine.Backdraft).Conditions, sign)
		assert.False(t, hazard(f, engine.Backdraft).Flagged, sign)
		o.State, o.Flow = engine.StateClosed, engine.FlowOut
		assert.Contains(t, hazard(read(o), engine.Backdraft).Conditions, sign, "shut")
	}
}

// NFCC's backdraught list: a tightly closed building, darkened glass, pulsing smoke
// pushed out as if under pressure. Yellow-grey is the trade's own (no source).
func TestAShutBuildingWithTheListedSignsFlagsBackdraft(t *testing.T) {
	door := engine.Reading{
		ID: "front_door", Kind: engine.SeenDoor, State: engine.StateClosed, Flow: engine.FlowOut, Volume: new(2), Velocity: new(3),
		Density: new(3), Darkness: new(2), Colour: engine.YellowGrey, Pulsing: new(true),
	}
	glass := engine.Reading{ID: "window", Kind: engine.SeenWindow, State: engine.StateClosed, Window: engine.GlassStained}
	f := hazard(read(door, glass), engine.Backdraft)
	assert.True(t, f.Flagged)
	assert.Greater(t, f.Probability, hazard(read(paleDoor()), engine.Backdraft).Probability+0.3)
	for _, condition := range []string{
		"an opening breathes in and out", "glass is stained dark or crazed", "thick yellowish-grey smoke shows", "smoke is thick, and no opening seen stands open",
	} {
		assert.Contains(t, f.Conditions, condition)
	}
}

// How a building stands is not told by one opening.
func TestOneOpeningTellsNothingOfTheRest(t *testing.T) {
	shut := func(id string) engine.Reading {
		return engine.Reading{ID: id, Kind: engine.SeenWindow, State: engine.StateClosed, Density: new(3)}
	}
	fired := func(openings ...engine.Reading) string {
		return fmt.Sprint(content.Rules().Fired(look(engine.Look{}, openings...)))
	}
	for _, rule := range []string{"little-open-thick-smoke", "shut-up-thick-smoke", "shut-more-than-open"} {
		assert.NotContains(t, fired(shut("a")), rule)
		assert.Contains(t, fired(shut("a"), shut("b")), rule)
	}
	assert.NotContains(t, fired(paleDoor()), "little-open-thick-smoke")
	assert.Contains(t, fired(paleDoor(), shut("a")), "little-open-thick-smoke")
	assert.NotContains(t, fired(paleDoor(), shut("a")), "shut-up-thick-smoke")
}
