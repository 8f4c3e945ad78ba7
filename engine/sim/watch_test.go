package sim

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"lintel/engine"
	"lintel/engine/truth"
	"lintel/engine/zone"
)

func TestASpellThatSwingsIsOne(t *testing.T) {
	var s spell
	begun := 0
	for i := range 100 {
		now := float64(i)
		above := i%7 < 3 // swings every 7 s
		if s.begins(above, above, now, 10) {
			begun++
		}
	}
	assert.Equal(t, 1, begun)
	assert.False(t, s.begins(false, false, 105, 10), "still in its hold")
	assert.True(t, s.on)
	assert.False(t, s.begins(false, false, 120, 10))
	assert.False(t, s.on, "over after the hold")
	assert.True(t, s.begins(true, true, 121, 10), "and may begin anew")
}

// follow plays heat release against time to a watch of one room of usual height.
func follow(seconds float64, kW func(t float64) float64) []string {
	r := &Run{model: &zone.Model{Rooms: make([]zone.Room, 1)}, scenario: engine.Scenario{Compartments: []engine.Compartment{{ID: "room"}}}}
	r.model.Rooms[0].Height = usualHeight
	r.watch.begin(r.model)
	for now := 0.2; now <= seconds; now += 0.2 {
		r.watch.lookFire(r, truth.State{TS: now, HRRKW: kW(now), FlashoverKW: 1000})
	}
	var kinds []string
	for _, e := range r.Events() {
		kinds = append(kinds, e.Kind)
	}
	return kinds
}

func growing(t float64) float64 { return 0.01 * t * t } // about a medium fire (NFPA 204, 0.012 kW/s²)

func TestRegrowthNeedsAFall(t *testing.T) {
	assert.Empty(t, follow(300, growing))
	assert.Empty(t, follow(300, func(t float64) float64 {
		if t > 110 && t < 120 {
			return 20 // the first fuel is spent before the next has caught
		}
		return growing(t)
	}), "a dip in the first growth")
	assert.Empty(t, follow(300, func(t float64) float64 { return 33 + 25*math.Sin(2*math.Pi*t/7) }), "a swing")
	assert.Equal(t, []string{Regrowth}, follow(300, func(t float64) float64 {
		switch {
		case t < 150:
			return growing(t)
		case t < 230:
			return 20
		}
		return 20 + growing(t-230)*4
	}))
	assert.Equal(t, []string{Extinction, Regrowth}, follow(400, func(t float64) float64 {
		switch {
		case t < 150:
			return growing(t)
		case t < 250:
			return 0
		}
		return growing(t - 250)
	}), "each once")
}
