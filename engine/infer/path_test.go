package infer

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"lintel/engine"
)

// house is two storeys: hall and kitchen below, a bedroom above the hall.
func house(kitchenDoor, stair float64) *engine.Plan {
	room := func(id string, floor float64) engine.Compartment {
		return engine.Compartment{ID: id, WidthM: 4, DepthM: 4, HeightM: 2.4, FloorM: floor}
	}
	return &engine.Plan{
		Compartments: []engine.Compartment{room("hall", 0), room("kitchen", 0), room("bedroom", 2.6)},
		Openings: []engine.Opening{
			{ID: "front_door", From: "hall", To: engine.Outside, Side: engine.Alpha, Kind: engine.Door, WidthM: 0.9, HeightM: 2, Open: new(1.0)},
			{ID: "kitchen_window", From: "kitchen", To: engine.Outside, Side: engine.Charlie, Kind: engine.Window, WidthM: 1, HeightM: 1, Open: new(1.0)},
			{ID: "bedroom_window", From: "bedroom", To: engine.Outside, Side: engine.Alpha, Kind: engine.Window, WidthM: 1, HeightM: 1, Open: new(1.0)},
			{ID: "kitchen_door", From: "hall", To: "kitchen", Kind: engine.Door, WidthM: 0.8, HeightM: 2, Open: &kitchenDoor},
			{ID: "stair", From: "hall", To: "bedroom", Kind: engine.CeilingHatch, AreaM2: 2, Open: &stair},
		},
	}
}

func TestThePathRunsFromInletBySeatToOutlet(t *testing.T) {
	door := engine.Reading{ID: "front_door", Flow: engine.FlowIn, Volume: new(0)}
	kitchen := engine.Reading{ID: "kitchen_window", Flow: engine.FlowBoth, Volume: new(4), Velocity: new(4), Darkness: new(4), Flame: engine.FlameFull}
	bedroom := engine.Reading{ID: "bedroom_window", Flow: engine.FlowOut, Volume: new(4), Velocity: new(4), Darkness: new(3)}
	shutWindow := engine.Reading{ID: "kitchen_window", Flow: engine.FlowNone, State: engine.StateClosed, Volume: new(0)}
	cases := []struct {
		name     string
		plan     *engine.Plan
		openings []engine.Reading
		want     []string
		note     string
	}{
		{"up the stair", house(0, 1), []engine.Reading{door, shutWindow, bedroom},
			[]string{"front_door", "hall", "stair", "bedroom", "bedroom_window"}, ""},
		{"by way of the seat", house(1, 1), []engine.Reading{door, kitchen, bedroom},
			[]string{"front_door", "hall", "kitchen_door", "kitchen", "kitchen_door", "hall", "stair", "bedroom", "bedroom_window"}, ""},
		{"no open way inside", house(0, 0), []engine.Reading{door, shutWindow, bedroom},
			[]string{"front_door", "bedroom_window"}, noWayNote},
		{"one opening does both", house(0, 0), []engine.Reading{kitchen},
			[]string{"kitchen_window", "kitchen", "kitchen_window"}, throughOneNote},
		{"inlet not seen", house(1, 1), []engine.Reading{bedroom}, []string{"bedroom_window"}, noInletNote},
		{"no plan", nil, []engine.Reading{door, bedroom}, []string{"front_door", "bedroom_window"}, noPlanNote},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			r := look(c.openings...)
			r.Plan = c.plan
			finding := Read(smallSet(t, Priors{}), r)
			assert.Equal(t, c.want, finding.Path)
			assert.Equal(t, c.note, finding.PathNote)
		})
	}
}

// What comes by the cracks of a shut window is neither end of a path while openings
// that stand open take air in and let smoke out, however fast it is; of two that do
// both the one with the higher plane takes in more.
func TestThePathGoesByWhatStandsOpen(t *testing.T) {
	door := engine.Reading{ID: "front_door", State: engine.StateOpen, Flow: engine.FlowBoth, NeutralPlane: new(0.65), Volume: new(3), Velocity: new(3), Darkness: new(3)}
	kitchen := engine.Reading{ID: "kitchen_window", State: engine.StateOpen, Flow: engine.FlowBoth, NeutralPlane: new(0.25), Volume: new(4), Velocity: new(4), Darkness: new(3)}
	shut := func(flow engine.Flow) engine.Reading {
		return engine.Reading{ID: "bedroom_window", State: engine.StateClosed, Flow: flow, Volume: new(1), Velocity: new(4), Darkness: new(3)}
	}
	cases := []struct {
		name     string
		openings []engine.Reading
		in, out  string
	}{
		{"a crack takes air in", []engine.Reading{door, kitchen, shut(engine.FlowIn)}, "front_door", "kitchen_window"},
		{"a crack lets smoke out", []engine.Reading{door, kitchen, shut(engine.FlowOut)}, "front_door", "kitchen_window"},
		{"one door and a crack", []engine.Reading{door, shut(engine.FlowOut)}, "front_door", "front_door"},
		{"all is shut", []engine.Reading{shut(engine.FlowOut), {ID: "front_door", State: engine.StateClosed, Flow: engine.FlowIn, Volume: new(0)}}, "front_door", "bedroom_window"},
	}
	for _, c := range cases {
		for _, plan := range []*engine.Plan{house(1, 1), nil} {
			r := look(c.openings...)
			r.Plan = plan
			path := Read(smallSet(t, Priors{}), r).Path
			assert.Equal(t, c.in, path[0], "%s, plan %t", c.name, plan != nil)
			assert.Equal(t, c.out, path[len(path)-1], "%s, plan %t", c.name, plan != nil)
		}
	}
}

// A door seen shut closes a way that the plan drew as open.
func TestWhatIsSeenOverridesThePlan(t *testing.T) {
	r := look(
		engine.Reading{ID: "front_door", Flow: engine.FlowIn, Volume: new(0)},
		engine.Reading{ID: "bedroom_window", Flow: engine.FlowOut, Volume: new(3), Velocity: new(3)},
	)
	r.Plan = house(0, 1)
	r.Looks[0].Changes = []engine.Change{{Opening: "stair", State: engine.StateClosed}}
	finding := Read(smallSet(t, Priors{}), r)
	assert.Equal(t, noWayNote, finding.PathNote)
}

func TestWhatLeavesMustComeInSomewhere(t *testing.T) {
	finding := Read(smallSet(t, Priors{}), look(
		engine.Reading{ID: "a", State: engine.StateOpen, Flow: engine.FlowOut, Volume: new(3)},
		engine.Reading{ID: "b", State: engine.StateOpen, Volume: new(0)},
	))
	assert.Equal(t, engine.RoleIn, finding.Openings["b"].Role)
	assert.Equal(t, []string{"b", "a"}, finding.Path)
}

// Of two like windows the faster and darker one is nearer; of a crack and a door
// the crack's speed says nothing, for little pressure makes a crack fast.
func TestNearnessComparesLikeWithLike(t *testing.T) {
	window := func(id string, velocity, darkness int) engine.Reading {
		return engine.Reading{ID: id, Kind: engine.SeenWindow, State: engine.StateOpen, Velocity: &velocity, Darkness: &darkness, Volume: new(3)}
	}
	set := smallSet(t, Priors{})
	finding := Read(set, look(window("a", 4, 4), window("b", 2, 2)))
	assert.Greater(t, finding.Openings["a"].Nearness, 2*finding.Openings["b"].Nearness)

	crack := engine.Reading{ID: "crack", Kind: engine.SeenCrack, Velocity: new(4), Darkness: new(3), Volume: new(1)}
	door := engine.Reading{ID: "door", Kind: engine.SeenDoor, State: engine.StateOpen, Velocity: new(2), Darkness: new(3), Volume: new(1)}
	finding = Read(set, look(crack, door))
	assert.InDelta(t, finding.Openings["crack"].Nearness, finding.Openings["door"].Nearness, 1e-9)

	alike := Read(set, look(window("a", 3, 3), window("b", 3, 3)))
	assert.Less(t, alike.Openings["a"].Nearness, 0.25, "no opening is picked where all are alike")
}

// Usual planes against measured ones: NBSIR 82-2520, door 0.74 x 1.83 m, 62.9 kW
// (test 14) 0.562 of the height at 115 C; NBS 1Room1 after flashover 0.40 at 830 C.
func TestEstimatedPlaneLiesNearMeasuredOnes(t *testing.T) {
	cases := []struct {
		name     string
		velocity int
		measured float64
	}{{"NBSIR 82-2520 test 14", 2, 0.562}, {"NBS 1Room1 at 470 to 500 s", 4, 0.40}}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			finding := Read(smallSet(t, Priors{}), look(engine.Reading{ID: "a", Flow: engine.FlowBoth, Velocity: &c.velocity}))
			opening := finding.Openings["a"]
			assert.True(t, opening.Estimated)
			assert.InDelta(t, c.measured, *opening.NeutralPlane, 0.05)
		})
	}
}
