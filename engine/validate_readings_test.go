package engine_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"lintel/engine"
)

// twoLooks is a readings file with one of everything that it can hold.
func twoLooks() engine.Readings {
	plan := engine.Plan{Compartments: house().Compartments, Openings: house().Openings}
	plan.Openings[0].Open = nil // a plan need not know how an opening stands
	return engine.Readings{
		V:        1,
		Building: &engine.Building{Kind: "house", Storeys: ptr(2), Construction: "wood_frame"},
		Plan:     &plan,
		Looks: []engine.Look{
			{TS: ptr(0.0), Wind: &engine.Wind{MS: ptr(3.0), From: engine.Alpha}, Openings: []engine.Reading{}},
			{TS: ptr(20.0), Changes: []engine.Change{{Opening: "door", State: engine.StateOpen}}, Openings: []engine.Reading{{
				ID: "door", Side: engine.Alpha, Floor: ptr(1), Kind: engine.SeenDoor, State: engine.StateOpen,
				WidthM: ptr(0.9), HeightM: ptr(2.0), Flow: engine.FlowBoth, Volume: ptr(3), Velocity: ptr(3),
				Density: ptr(4), Darkness: ptr(4), Colour: engine.Black, Flame: engine.FlameNone,
				Window: engine.GlassClear, NeutralPlane: ptr(0.4),
			}}},
		},
	}
}

func TestValidateAcceptsTwoLooks(t *testing.T) {
	require.NoError(t, twoLooks().Validate())
}

func TestValidateReadingsSaysWhereAndWhat(t *testing.T) {
	cases := map[string]struct {
		spoil func(*engine.Readings)
		where string
		says  string
	}{
		"wrong version":      {func(r *engine.Readings) { r.V = 0 }, "v", "write 1"},
		"no look":            {func(r *engine.Readings) { r.Looks = nil }, "looks", "at least 1"},
		"looks running back": {func(r *engine.Readings) { r.Looks[0].TS = ptr(50.0) }, "looks[1].t_s", "in order of time"},
		"time not a number":  {func(r *engine.Readings) { r.Looks[0].TS = ptr(math.NaN()) }, "looks[0].t_s", "is NaN"},
		"no storeys":         {func(r *engine.Readings) { r.Building.Storeys = ptr(0) }, "building.storeys", "from 1"},
		"long kind":          {func(r *engine.Readings) { r.Building.Kind = strings.Repeat("x", 500) }, "building.kind", "at most 400"},
		"gale beyond gales":  {func(r *engine.Readings) { r.Looks[0].Wind.MS = ptr(90.0) }, "looks[0].wind.m_s", "from 0 to 60 m/s"},
		"wind from E":        {func(r *engine.Readings) { r.Looks[0].Wind.From = "E" }, "looks[0].wind.from", "A, B, C or D"},
		"change of nothing":  {func(r *engine.Readings) { r.Looks[1].Changes[0].Opening = "" }, "looks[1].changes[0].opening", "is missing"},
		"change to ajar":     {func(r *engine.Readings) { r.Looks[1].Changes[0].State = "ajar" }, "looks[1].changes[0].state", "open, part"},
		"nameless opening":   {func(r *engine.Readings) { r.Looks[1].Openings[0].ID = "" }, "looks[1].openings[0].id", "is missing"},
		"one opening twice": {func(r *engine.Readings) {
			r.Looks[1].Openings = append(r.Looks[1].Openings, r.Looks[1].Openings[0])
		}, "looks[1].openings[1].id", "taken"},
		"level five":           {func(r *engine.Readings) { r.Looks[1].Openings[0].Density = ptr(5) }, "looks[1].openings[0].density", "from 0 to 4"},
		"level below none":     {func(r *engine.Readings) { r.Looks[1].Openings[0].Volume = ptr(-1) }, "looks[1].openings[0].volume", "is -1"},
		"purple smoke":         {func(r *engine.Readings) { r.Looks[1].Openings[0].Colour = "purple" }, "looks[1].openings[0].colour", "white, light_grey"},
		"flow sideways":        {func(r *engine.Readings) { r.Looks[1].Openings[0].Flow = "left" }, "looks[1].openings[0].flow", "in, out, both or none"},
		"plane above the head": {func(r *engine.Readings) { r.Looks[1].Openings[0].NeutralPlane = ptr(1.4) }, "looks[1].openings[0].neutral_plane", "from 0 to 1"},
		"opening of no width":  {func(r *engine.Readings) { r.Looks[1].Openings[0].WidthM = ptr(0.0) }, "looks[1].openings[0].width_m", "above 0"},
		"plan to nowhere":      {func(r *engine.Readings) { r.Plan.Openings[1].To = "cellar" }, "plan.openings[1].to", "leads nowhere"},
		"plan without rooms":   {func(r *engine.Readings) { r.Plan.Compartments = nil }, "plan.compartments", "at least 1"},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			readings := twoLooks()
			c.spoil(&readings)
			requireProblem(t, readings.Validate(), c.where, c.says)
		})
	}
}
