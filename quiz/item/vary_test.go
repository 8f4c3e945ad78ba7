package item

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/engine"
	"lintel/engine/cue"
	"lintel/quiz"
)

func ptr[T any](x T) *T { return &x }

// oneRoom is a family with one of everything that can be varied.
func oneRoom() *Family {
	return &Family{
		ID:   "one-room",
		Kind: quiz.ReadOpening,
		Scene: engine.Scenario{
			V:            1,
			Ambient:      engine.Ambient{TempC: 20, WindFrom: engine.Alpha},
			Compartments: []engine.Compartment{{ID: "room", WidthM: 3, DepthM: 4, HeightM: 2.4, Lining: "gypsum"}},
			Openings:     []engine.Opening{{ID: "door", From: "room", To: engine.Outside, Side: engine.Alpha, Kind: engine.Door, WidthM: 0.8, HeightM: 2, Open: ptr(1.0)}},
			Fuels:        []engine.Fuel{{ID: "burner", In: "room", Kind: engine.GasBurner, HRRKW: [][2]float64{{0, 0}, {60, 200}}}},
			Moves:        []engine.Move{{TS: 100, WaterL: ptr(10.0), In: "room"}, {TS: 120, WindMS: ptr(3.0)}},
			EndS:         300,
		},
	}
}

func draw(seed uint64) *rand.Rand { return rand.New(rand.NewPCG(seed, 1)) }

func TestEveryKnobTurnsAndLeavesTheFamilyAlone(t *testing.T) {
	cases := map[Knob]struct {
		vary Vary
		got  func(engine.Scenario) float64
		want float64
	}{
		RoomSize:      {Vary{ID: "room", Low: 2, High: 2}, func(s engine.Scenario) float64 { return s.Compartments[0].DepthM }, 8},
		OpeningWidth:  {Vary{ID: "door", Low: 0.7, High: 0.7}, func(s engine.Scenario) float64 { return s.Openings[0].WidthM }, 0.7},
		OpeningHeight: {Vary{ID: "door", Low: 1.9, High: 1.9}, func(s engine.Scenario) float64 { return s.Openings[0].HeightM }, 1.9},
		OpeningSill:   {Vary{ID: "door", Low: 0.1, High: 0.1}, func(s engine.Scenario) float64 { return s.Openings[0].SillM }, 0.1},
		OpeningShare:  {Vary{ID: "door", Low: 0.5, High: 0.5}, func(s engine.Scenario) float64 { return *s.Openings[0].Open }, 0.5},
		FuelMass:      {Vary{ID: "burner", Low: 0.5, High: 0.5}, func(s engine.Scenario) float64 { return s.Fuels[0].HRRKW[1][1] }, 100},
		BurnerPower:   {Vary{ID: "burner", Low: 3, High: 3}, func(s engine.Scenario) float64 { return s.Fuels[0].HRRKW[1][1] }, 600},
		MoveTime:      {Vary{Low: -40, High: -40}, func(s engine.Scenario) float64 { return s.Moves[0].TS }, 60},
		MoveWind:      {Vary{Low: 7, High: 7}, func(s engine.Scenario) float64 { return *s.Moves[1].WindMS }, 7},
		MoveWater:     {Vary{Low: 1.5, High: 1.5}, func(s engine.Scenario) float64 { return *s.Moves[0].WaterL }, 15},
		WindSpeed:     {Vary{Low: 4, High: 4}, func(s engine.Scenario) float64 { return s.Ambient.WindMS }, 4},
		AirTemp:       {Vary{Low: -5, High: -5}, func(s engine.Scenario) float64 { return s.Ambient.TempC }, -5},
	}
	for _, knob := range Knobs {
		if knob == FuelOf || knob == FuelRoom || knob == WindSide {
			continue // takes a word, see below
		}
		c, listed := cases[knob]
		require.True(t, listed, "no case for the knob %s", knob)
		family := oneRoom()
		c.vary.Knob = knob
		family.Vary = []Vary{c.vary}
		scene, err := family.scene(draw(1))
		require.NoError(t, err, knob)
		assert.InDelta(t, c.want, c.got(scene), 1e-9, knob)
		assert.Equal(t, oneRoom().Scene, family.Scene, "%s changed the family itself", knob)
	}
}

func TestKnobsOfWordsDrawEveryWord(t *testing.T) {
	for knob, c := range map[Knob]struct {
		words []string
		got   func(engine.Scenario) string
	}{
		FuelOf:   {[]string{"straw", "softwood"}, func(s engine.Scenario) string { return s.Fuels[0].Kind }},
		FuelRoom: {[]string{"room", "hall"}, func(s engine.Scenario) string { return s.Fuels[0].In }},
		WindSide: {[]string{"A", "C"}, func(s engine.Scenario) string { return string(s.Ambient.WindFrom) }},
	} {
		family := oneRoom()
		family.Vary = []Vary{{Knob: knob, ID: "burner", Words: c.words}}
		seen := map[string]int{}
		for seed := range uint64(40) {
			scene, err := family.scene(draw(seed))
			require.NoError(t, err)
			seen[c.got(scene)]++
		}
		assert.Len(t, seen, 2, knob)
		assert.Greater(t, min(seen[c.words[0]], seen[c.words[1]]), 8, knob)
	}
}

func TestDrawReachesEveryStepAndNoOther(t *testing.T) {
	seen := map[float64]bool{}
	source := draw(7)
	for range 400 {
		seen[Vary{Low: 0.7, High: 0.9, Step: 0.05}.draw(source)] = true
	}
	assert.Len(t, seen, 5)
	for _, x := range []float64{0.7, 0.75, 0.8, 0.85, 0.9} {
		assert.True(t, seen[x], "%v was never drawn", x)
	}
}

func TestTurningWhatIsNotThereIsAProblem(t *testing.T) {
	for name, v := range map[string]Vary{
		"a room":        {Knob: RoomSize, ID: "attic"},
		"an opening":    {Knob: OpeningWidth, ID: "gate"},
		"a fuel":        {Knob: FuelMass, ID: "sofa"},
		"a kind":        {Knob: FuelOf, ID: "sofa", Words: []string{"straw"}},
		"no words":      {Knob: FuelOf, ID: "burner"},
		"another thing": {Knob: "colour"},
	} {
		family := oneRoom()
		family.Vary = []Vary{v}
		_, err := family.scene(draw(1))
		var problem *engine.Problem
		require.ErrorAs(t, err, &problem, name)
		assert.Contains(t, problem.Where, "vary[0]")
	}
}

func TestRatioChange(t *testing.T) {
	for _, c := range []struct {
		before, after float64
		want          quiz.Change
		ok            bool
	}{
		{1, 1.05, quiz.Same, true}, {1, 0.95, quiz.Same, true}, {1, 2, quiz.More, true}, {2, 1, quiz.Less, true},
		{0, 3, quiz.More, true}, {3, 0, quiz.Less, true}, {0, 0, "", false}, {math.NaN(), 1, "", false},
	} {
		got, margin, ok := ratioChange(c.before, c.after)
		assert.Equal(t, c.ok, ok, "%+v", c)
		assert.Equal(t, c.want, got, "%+v", c)
		assert.True(t, margin >= 0 && margin <= 1, "%+v: margin %v", c, margin)
	}
	_, far, _ := ratioChange(1, 3)
	_, near, _ := ratioChange(1, 1.25)
	assert.Greater(t, far, near)
}

func TestPlaneChangeTakesOneWayOpeningsToTheirEnds(t *testing.T) {
	two := cue.Rating{Flow: engine.FlowBoth, NeutralPlane: 0.5}
	in := cue.Rating{Flow: engine.FlowIn, NeutralPlane: math.NaN()}
	out := cue.Rating{Flow: engine.FlowOut, NeutralPlane: math.NaN()}
	none := cue.Rating{Flow: engine.FlowNone, NeutralPlane: math.NaN()}
	for _, c := range []struct {
		before, after cue.Rating
		want          quiz.Change
		ok            bool
	}{{two, in, quiz.More, true}, {two, out, quiz.Less, true}, {two, two, quiz.Same, true}, {out, in, quiz.More, true}, {two, none, "", false}} {
		got, _, ok := change(engine.CueNeutralPlane, &c.before, &c.after)
		assert.Equal(t, c.ok, ok)
		assert.Equal(t, c.want, got)
	}
}
