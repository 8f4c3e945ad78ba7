package zone

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// A flame at a limit is bistable: whatever it breathes, it ends whole or out, and
// never rests at half. It dies over tens of seconds in a room and faster in a box.
func TestAFlameEndsWholeOrOut(t *testing.T) {
	for lives := 0.0; lives <= 1; lives += 0.05 {
		for _, start := range []float64{0.1, 0.5, 1} {
			f := Fire{Burner: true, Flame: start, lit: true}
			for range 20000 {
				f.tend(airAt{lives: lives, moles: 0.1}, 2.4, StepS)
			}
			assert.True(t, f.Flame < 0.05 || f.Flame > 0.75, "rests at %.2f from %.1f in air that lives %.2f", f.Flame, start, lives)
		}
	}
	dies := func(height float64) float64 {
		f := Fire{Burner: true, Flame: 1, lit: true}
		at := 0.0
		for ; f.Flame > 0.1; at += StepS {
			f.tend(airAt{moles: 0.05}, height, StepS)
		}
		return at
	}
	room, box := dies(2.4), dies(0.6)
	t.Logf("down to a tenth in %.1f s in a room, %.1f s in a box", room, box)
	assert.InDelta(t, 2, room/box, 0.05)
	assert.Greater(t, room, 10.0)
	assert.Less(t, room, 60.0)
}

// The temperature by which a layer burns inside itself rises with it and falls over
// some seconds, so that a starved layer burns steadily and does not go out and light
// again with every breath.
func TestALayerRemembersItsHeat(t *testing.T) {
	r := Room{Height: 0.6, lastingS: lastingS}
	r.remember(Upper, 800, StepS)
	assert.Equal(t, 800.0, r.lasting[Upper], "up at once")
	for range 40 {
		r.remember(Upper, 500, StepS)
	}
	assert.Greater(t, r.lasting[Upper], 650.0, "down over seconds")
	assert.Less(t, r.lasting[Upper], 720.0)
}
