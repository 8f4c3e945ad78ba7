package cue_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/engine"
	"lintel/engine/cue"
	"lintel/engine/internal/num"
)

// door is a 0.9 m by 2.0 m door with grey smoke leaving its upper half.
func door() cue.Physical {
	return cue.Physical{
		Kind: engine.Door, FrameM2: 1.8, OpenM2: 1.8, HeightM: 2, RoomHeightM: 2.4,
		InKgS: 0.6, OutKgS: 0.62, OutM3S: 0.9, OutBandM: 1, OutVelocityMS: 1, TopVelocityMS: 1.5,
		OutTempC: 200, AmbientC: 20,
		ExtinctionM: 2, OpticalDepth: 2, Lightness: 0.4, NeutralPlane: 0.5,
	}
}

// scaled is the same opening at another size: lengths by k, areas by k²,
// speeds by √k, flows by k^2.5, and the same look (optical depth).
func scaled(p cue.Physical, k float64) cue.Physical {
	root, flow := math.Sqrt(k), num.Pow(k, 2.5)
	p.FrameM2 *= k * k
	p.OpenM2 *= k * k
	p.HeightM *= k
	p.RoomHeightM *= k
	p.OutBandM *= k
	p.InKgS *= flow
	p.OutKgS *= flow
	p.OutM3S *= flow
	p.OutVelocityMS *= root
	p.TopVelocityMS *= root
	p.FlameKW *= flow
	p.ExtinctionM /= k
	return p
}

// The Froude laws (velocity as the root of length, flow and heat release as its
// power 2.5) leave every measure alone: a box and a house rate alike.
func TestBoxAndHouseRateAlike(t *testing.T) {
	_, s := scaleBook(t)
	house := door()
	house.FlameKW = 80
	box := scaled(house, 1.0/6)
	a, b := house.Measure(), box.Measure()
	assert.InEpsilon(t, a.Volume, b.Volume, 1e-9)
	assert.InEpsilon(t, a.Velocity, b.Velocity, 1e-9)
	assert.InEpsilon(t, a.Churning, b.Churning, 1e-9)
	assert.InEpsilon(t, a.Flame, b.Flame, 1e-9)
	assert.InEpsilon(t, a.Through, b.Through, 1e-9)
	x, y := cue.Rate(&house, &s, nil), cue.Rate(&box, &s, nil)
	assert.Equal(t, [4]int{x.Volume, x.Velocity, x.Density, x.Darkness}, [4]int{y.Volume, y.Velocity, y.Density, y.Darkness})
	assert.Equal(t, x.Flame, y.Flame)
}

// But a box is too small to churn at the speeds at which a house does: the look
// of smoothness does not carry over (see the lesson on the box).
func TestASmallBoxStaysSmooth(t *testing.T) {
	_, s := scaleBook(t)
	house := door()
	house.OutTempC, house.OutVelocityMS, house.TopVelocityMS = 500, 2.4, 3.6
	box := scaled(house, 1.0/10)
	assert.True(t, cue.Rate(&house, &s, nil).Churning)
	assert.False(t, cue.Rate(&box, &s, nil).Churning)
	assert.GreaterOrEqual(t, house.Rolls(&s), s.Churning, "the picture says so too")
	assert.Less(t, box.Rolls(&s), s.Churning)
}

// Each ordinal cue answers to its own measure and to no other.
func TestNoMeasureServesTwoCues(t *testing.T) {
	plain := door()
	base := plain.Measure()
	for name, change := range map[string]func(*cue.Physical){
		"volume":   func(p *cue.Physical) { p.OutM3S *= 3 },
		"velocity": func(p *cue.Physical) { p.OutVelocityMS *= 3 },
		"density":  func(p *cue.Physical) { p.OpticalDepth *= 3 },
		"darkness": func(p *cue.Physical) { p.Lightness /= 3 },
	} {
		p := door()
		change(&p)
		m := p.Measure()
		assert.Equal(t, name == "volume", m.Volume != base.Volume, name)
		assert.Equal(t, name == "velocity", m.Velocity != base.Velocity, name)
		assert.Equal(t, name == "density", m.Density != base.Density, name)
		assert.Equal(t, name == "darkness", m.Darkness != base.Darkness, name)
	}
}

// More of the cause never rates less.
func TestRatingsRiseWithTheirCause(t *testing.T) {
	_, s := scaleBook(t)
	before := cue.Rating{}
	for step := range 60 {
		factor := num.Pow(1.2, float64(step)) * 0.003
		p := door()
		p.OutM3S *= factor
		p.OutVelocityMS *= factor
		p.OpticalDepth *= factor
		r := cue.Rate(&p, &s, nil)
		assert.GreaterOrEqual(t, r.Volume, before.Volume)
		assert.GreaterOrEqual(t, r.Velocity, before.Velocity)
		assert.GreaterOrEqual(t, r.Density, before.Density)
		before = r
	}
	assert.Equal(t, [3]int{4, 4, 4}, [3]int{before.Volume, before.Velocity, before.Density})
}

func TestFlowIsNamedByItsWeakerSide(t *testing.T) {
	_, s := scaleBook(t)
	for _, c := range []struct {
		in, out float64
		want    engine.Flow
	}{
		{0.6, 0.6, engine.FlowBoth}, {0.02, 0.6, engine.FlowOut},
		{0.6, 0.02, engine.FlowIn}, {0.001, 0.002, engine.FlowNone}, {0, 0, engine.FlowNone},
	} {
		p := door()
		p.InKgS, p.OutKgS = c.in, c.out
		r := cue.Rate(&p, &s, nil)
		assert.Equal(t, c.want, r.Flow)
		assert.Equal(t, c.want != engine.FlowBoth, math.IsNaN(r.NeutralPlane), "a plane only where both ways are seen")
		if c.want == engine.FlowIn {
			assert.Zero(t, r.Volume+r.Velocity+r.Density+r.Darkness, "an inlet shows no smoke")
			assert.Empty(t, r.Colour)
		}
	}
}

// A rating on its cut has no margin, and a rating at ease has one.
func TestMarginsVanishOnACut(t *testing.T) {
	_, s := scaleBook(t)
	p := door()
	p.OpticalDepth = s.Density.Cuts[2]
	r := cue.Rate(&p, &s, nil)
	assert.InDelta(t, 0, r.Margins.Of(engine.CueDensity), 1e-12)
	p.OpticalDepth = math.Sqrt(s.Density.Cuts[2] * s.Density.Cuts[3])
	r = cue.Rate(&p, &s, nil)
	assert.Greater(t, r.Margins.Density, 0.35)

	// The margin is what it claims: a smaller error cannot change the level.
	for _, way := range []float64{1 - 0.99*r.Margins.Density, 1 / (1 - 0.99*r.Margins.Density)} {
		q := p
		q.OpticalDepth *= way
		assert.Equal(t, r.Density, cue.Rate(&q, &s, nil).Density)
	}
}

// A measure that trembles on a cut does not make the rating flicker.
func TestHysteresisHoldsALevel(t *testing.T) {
	_, s := scaleBook(t)
	p := door()
	p.OpticalDepth = s.Density.Cuts[2] * 1.01
	r := cue.Rate(&p, &s, nil)
	require.Equal(t, 3, r.Density)
	for tremble := range 10 {
		p.OpticalDepth = s.Density.Cuts[2] * (0.95 + 0.01*float64(tremble))
		r = cue.Rate(&p, &s, &r)
		assert.Equal(t, 3, r.Density)
	}
	p.OpticalDepth = s.Density.Cuts[2] * (1 - s.Density.Hysteresis - 0.01)
	assert.Equal(t, 2, cue.Rate(&p, &s, &r).Density)
}

func TestHuesFollowTarAndSoot(t *testing.T) {
	_, s := scaleBook(t)
	for _, c := range []struct {
		lightness, tint float64
		want            engine.Colour
	}{
		{0.85, 1, engine.White}, {0.66, 0.5, engine.YellowGrey}, {0.60, 0.3, engine.Brown},
		{0.56, 0.1, engine.LightGrey}, {0.47, 0.1, engine.Grey}, {0.38, 0.1, engine.DarkGrey}, {0.2, 0, engine.Black},
	} {
		p := door()
		p.Lightness, p.Tint = c.lightness, c.tint
		r := cue.Rate(&p, &s, nil)
		assert.Equal(t, c.want, r.Colour)
	}
}

func TestFlameIsSetAgainstTheOpening(t *testing.T) {
	_, s := scaleBook(t)
	p := door()
	for _, c := range []struct {
		kW   float64
		want engine.FlameSeen
	}{{0, engine.FlameNone}, {60, engine.FlameTongues}, {400, engine.FlameFull}} {
		p.FlameKW = c.kW
		assert.Equal(t, c.want, cue.Rate(&p, &s, nil).Flame)
	}
}

// A crack is set against the room behind it: a little pressure makes it fast,
// and that must not read as a driven fire.
func TestACrackIsNotReadAsADoor(t *testing.T) {
	_, s := scaleBook(t)
	p := door()
	p.Kind, p.FrameM2, p.OpenM2, p.HeightM, p.OutBandM = engine.Leak, 0.002, 0.002, 0.002, 0.002
	p.InKgS, p.OutKgS, p.OutM3S, p.OpticalDepth = 0, 0.002, 0.002, 0.5
	r := cue.Rate(&p, &s, nil)
	assert.Equal(t, engine.FlowOut, r.Flow)
	assert.Equal(t, 1, r.Volume)
	assert.LessOrEqual(t, r.Velocity, 2)
}

// The same for a shut window: what comes by its cracks is fast and thin, and
// neither boils nor drives.
func TestAShutWindowIsItsCracks(t *testing.T) {
	_, s := scaleBook(t)
	open := door()
	open.Kind, open.FrameM2, open.HeightM = engine.Window, 1.3, 1.1
	open.OpenM2, open.OutBandM, open.OutVelocityMS, open.TopVelocityMS = 1.3, 1.1, 1.8, 3.2
	shut := open
	shut.OpenM2, shut.InKgS, shut.OutKgS, shut.OutM3S = 0.005, 0, 0.006, 0.0075
	a, b := cue.Rate(&open, &s, nil), cue.Rate(&shut, &s, nil)
	assert.Greater(t, a.Velocity, b.Velocity)
	assert.Greater(t, a.Volume, b.Volume)
	assert.True(t, a.Churning)
	assert.False(t, b.Churning)
}
