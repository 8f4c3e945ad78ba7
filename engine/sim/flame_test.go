package sim_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/engine"
	"lintel/engine/handcalc"
)

// A room that has flashed over shows flame out of its open door (common practice, no
// source), as far as the window flame of CIBSE Guide E eq. 6.57 stands over the head; a
// small fire in the same room shows none at the door, nor does a door that is shut.
func TestFlameReachesOutOfAFlashedOverRoom(t *testing.T) {
	b := light(t, room(1500)).to(120)
	require.Greater(t, b.Model().Rooms[0].Gas[1].Temp(), 600+273.0)
	burns := b.Model().Rooms[0].Out.BurnW / 1000
	tip := handcalc.WindowFlame(handcalc.Vent{WidthM: 0.74, HeightM: 1.83}, burns/13000)
	require.Greater(t, tip, 0.2)
	band := b.Physical(0).OutBandM
	assert.InDelta(t, tip+band, handcalc.FlameHeightSimple(b.Physical(0).FlameKW), 0.05*(tip+band))
	assert.NotEqual(t, engine.FlameNone, b.Rating(0).Flame)

	small := light(t, room(200)).to(120)
	assert.Zero(t, small.Physical(0).FlameKW)
	assert.Equal(t, engine.FlameNone, small.Rating(0).Flame)

	b.set("door", 0).to(122)
	assert.Equal(t, engine.FlameNone, b.Rating(0).Flame)
}
