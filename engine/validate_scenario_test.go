package engine_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/engine"
)

func ptr[T any](x T) *T { return &x }

// house is a room under a loft, with one of everything that a scenario can hold.
func house() engine.Scenario {
	return engine.Scenario{
		V:       1,
		Ambient: engine.Ambient{TempC: 20, WindMS: 3, WindFrom: engine.Alpha},
		Compartments: []engine.Compartment{
			{ID: "room", WidthM: 4, DepthM: 3, HeightM: 2.4, Lining: "gypsum"},
			{ID: "loft", WidthM: 4, DepthM: 3, HeightM: 1.8, FloorM: 2.6, Lining: "softwood"},
			{ID: "hall", WidthM: 2, DepthM: 3, HeightM: 2.4, Lining: "gypsum", Initial: &engine.Initial{UpperC: ptr(90.0), InterfaceM: ptr(1.2)}},
		},
		Openings: []engine.Opening{
			{ID: "door", From: "room", To: engine.Outside, Side: engine.Alpha, Kind: engine.Door, WidthM: 0.9, HeightM: 2, Open: ptr(1.0)},
			{ID: "inner", From: "hall", To: "room", Side: engine.Delta, Kind: engine.Door, WidthM: 0.8, HeightM: 2, Open: ptr(0.5)},
			{ID: "hatch", From: "room", To: "loft", Kind: engine.CeilingHatch, AreaM2: 0.4, Shape: "square", Open: ptr(0.0)},
			{ID: "roof", From: "loft", To: engine.Outside, Kind: engine.RoofHatch, AreaM2: 0.5, Shape: "round", Open: ptr(0.0)},
		},
		Fuels: []engine.Fuel{
			{ID: "burner", In: "room", Kind: engine.GasBurner, HRRKW: [][2]float64{{0, 60}, {120, 300}}, Place: engine.Corner},
			{ID: "sofa", In: "room", Kind: "foam", MassKg: ptr(12.0), IgniteS: ptr(30.0)},
		},
		Moves: []engine.Move{
			{TS: 300, Opening: "door", Open: ptr(0.25), OverS: 2},
			{TS: 400, Fuel: "foam", In: "room", MassKg: ptr(0.5)},
			{TS: 500, WaterL: ptr(20.0), In: "room"},
			{TS: 600, WindMS: ptr(5.0), WindFrom: engine.Bravo},
		},
		EndS: 900,
	}
}

func materials() engine.Materials {
	return engine.Materials{
		Fuels:   []engine.FuelKind{{ID: "foam"}, {ID: "straw"}},
		Linings: []engine.Lining{{ID: "gypsum"}, {ID: "softwood"}},
	}
}

func TestValidateAcceptsAHouse(t *testing.T) {
	require.NoError(t, house().Validate())
	require.NoError(t, house().ValidateMaterials(materials()))
}

// Each case breaks the house in one way; the error must say where, and say
// something of what is wrong.
func TestValidateScenarioSaysWhereAndWhat(t *testing.T) {
	cases := map[string]struct {
		spoil func(*engine.Scenario)
		where string
		says  string
	}{
		"wrong version":        {func(s *engine.Scenario) { s.V = 2 }, "v", "write 1"},
		"no compartment":       {func(s *engine.Scenario) { s.Compartments = nil }, "compartments", "at least 1"},
		"too many rooms":       {func(s *engine.Scenario) { s.Compartments = make([]engine.Compartment, 13) }, "compartments", "at most 12"},
		"endless":              {func(s *engine.Scenario) { s.EndS = 1e6 }, "end_s", "at most 14400"},
		"end not a number":     {func(s *engine.Scenario) { s.EndS = math.NaN() }, "end_s", "is NaN"},
		"air in kelvin":        {func(s *engine.Scenario) { s.Ambient.TempC = 293 }, "ambient.t_c", "from -60 to 60 C"},
		"wind from nowhere":    {func(s *engine.Scenario) { s.Ambient.WindFrom = "" }, "ambient.wind_from", "A, B, C or D"},
		"wind without a side":  {func(s *engine.Scenario) { s.Openings[0].Side = "" }, "openings[0].side", "while wind blows"},
		"negative width":       {func(s *engine.Scenario) { s.Compartments[1].WidthM = -4 }, "compartments[1].width_m", "is -4"},
		"infinite height":      {func(s *engine.Scenario) { s.Compartments[0].HeightM = math.Inf(1) }, "compartments[0].height_m", "is +Inf"},
		"same room twice":      {func(s *engine.Scenario) { s.Compartments[1].ID = "room" }, "compartments[1].id", "taken"},
		"room named outside":   {func(s *engine.Scenario) { s.Compartments[0].ID = engine.Outside }, "compartments[0].id", "open air"},
		"opening named a room": {func(s *engine.Scenario) { s.Openings[0].ID = "loft" }, "openings[0].id", "taken"},
		"layers upside down":   {func(s *engine.Scenario) { s.Compartments[2].Initial.LowerC = ptr(200.0) }, "compartments[2].initial.upper_c", "hotter gas above"},
		"layer above ceiling":  {func(s *engine.Scenario) { s.Compartments[2].Initial.InterfaceM = ptr(3.0) }, "compartments[2].initial.interface_m", "from 0 to 2.4 m"},
		"opening to nowhere":   {func(s *engine.Scenario) { s.Openings[1].To = "cellar" }, "openings[1].to", "leads nowhere"},
		"opening from outside": {func(s *engine.Scenario) { s.Openings[0].From = engine.Outside }, "openings[0].from", "no compartment"},
		"opening to itself":    {func(s *engine.Scenario) { s.Openings[1].To = "hall" }, "openings[1].to", "same as from"},
		"no such kind":         {func(s *engine.Scenario) { s.Openings[0].Kind = "gate" }, "openings[0].kind", "door, window, port"},
		"no such side":         {func(s *engine.Scenario) { s.Openings[1].Side = "E" }, "openings[1].side", `is "E"`},
		"share above one":      {func(s *engine.Scenario) { s.Openings[0].Open = ptr(1.5) }, "openings[0].open", "from 0 to 1"},
		"share missing":        {func(s *engine.Scenario) { s.Openings[0].Open = nil }, "openings[0].open", "is missing"},
		"taller than the room": {func(s *engine.Scenario) { s.Openings[0].HeightM = 2.6 }, "openings[0].height_m", "2.4 m high"},
		"wider than the wall":  {func(s *engine.Scenario) { s.Openings[0].WidthM = 5 }, "openings[0].width_m", "in a wall of 4 m"},
		"past the corner":      {func(s *engine.Scenario) { s.Openings[0].AtM = ptr(3.5) }, "openings[0].at_m", "4.4 m along a wall of 4 m"},
		"below next floor":     {func(s *engine.Scenario) { s.Compartments[2].FloorM = -0.5 }, "openings[1].sill_m", `below the floor of "room"`},
		"door with an area":    {func(s *engine.Scenario) { s.Openings[0].AreaM2 = 1 }, "openings[0].area_m2", "leave it out"},
		"hatch with a width":   {func(s *engine.Scenario) { s.Openings[2].WidthM = 1 }, "openings[2].width_m", "leave it out"},
		"hatch without area":   {func(s *engine.Scenario) { s.Openings[2].AreaM2 = 0 }, "openings[2].area_m2", "above 0"},
		"hatch as a star":      {func(s *engine.Scenario) { s.Openings[2].Shape = "star" }, "openings[2].shape", "square or round"},
		"hatch sideways":       {func(s *engine.Scenario) { s.Openings[2].To = "hall" }, "openings[2].to", "neither stands on the other"},
		"hole to the open air": {func(s *engine.Scenario) { s.Openings[3].Kind = engine.FloorHole }, "openings[3].to", "under it"},
		"fuel nowhere":         {func(s *engine.Scenario) { s.Fuels[1].In = "yard" }, "fuels[1].in", "no compartment"},
		"fuel of no kind":      {func(s *engine.Scenario) { s.Fuels[1].Kind = "" }, "fuels[1].kind", "is missing"},
		"fuel without mass":    {func(s *engine.Scenario) { s.Fuels[1].MassKg = nil }, "fuels[1].mass_kg", "is missing"},
		"burner without power": {func(s *engine.Scenario) { s.Fuels[0].HRRKW = nil }, "fuels[0].hrr_kw", "at least 1"},
		"power running back":   {func(s *engine.Scenario) { s.Fuels[0].HRRKW[1][0] = 0 }, "fuels[0].hrr_kw[1][0]", "rising order"},
		"power not a number":   {func(s *engine.Scenario) { s.Fuels[0].HRRKW[1][1] = math.NaN() }, "fuels[0].hrr_kw[1][1]", "is NaN"},
		"solid with a ramp":    {func(s *engine.Scenario) { s.Fuels[1].HRRKW = [][2]float64{{0, 1}} }, "fuels[1].hrr_kw", "leave it out"},
		"base above ceiling":   {func(s *engine.Scenario) { s.Fuels[1].BaseM = ptr(5.0) }, "fuels[1].base_m", "from 0 to 2.4 m"},
		"fire wider than room": {func(s *engine.Scenario) { s.Fuels[1].DiameterM = ptr(9.0) }, "fuels[1].diameter_m", "at most 3 m"},
		"placed in the air":    {func(s *engine.Scenario) { s.Fuels[0].Place = "sky" }, "fuels[0].place", "centre, wall or corner"},
		"move of nothing":      {func(s *engine.Scenario) { s.Moves[0] = engine.Move{TS: 10} }, "moves[0]", "exactly one thing"},
		"two moves in one":     {func(s *engine.Scenario) { s.Moves[0].WaterL = ptr(1.0) }, "moves[0]", "exactly one thing"},
		"move before start":    {func(s *engine.Scenario) { s.Moves[0].TS = -1 }, "moves[0].t_s", "is -1"},
		"move of no opening":   {func(s *engine.Scenario) { s.Moves[0].Opening = "gate" }, "moves[0].opening", "no opening"},
		"move without a share": {func(s *engine.Scenario) { s.Moves[0].Open = nil }, "moves[0].open", "is missing"},
		"fuel without amount":  {func(s *engine.Scenario) { s.Moves[1].MassKg = nil }, "moves[1].mass_kg", "is missing"},
		"water without amount": {func(s *engine.Scenario) { s.Moves[2].WaterL = ptr(0.0) }, "moves[2].water_l", "above 0"},
		"water nowhere":        {func(s *engine.Scenario) { s.Moves[2].In = "" }, "moves[2].in", "no compartment"},
		"wind in a room":       {func(s *engine.Scenario) { s.Moves[3].In = "room" }, "moves[3].in", "leave it out"},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			scenario := house()
			c.spoil(&scenario)
			requireProblem(t, scenario.Validate(), c.where, c.says)
		})
	}
}

func TestValidateMaterialsNamesWhatIsMissing(t *testing.T) {
	scenario := house()
	scenario.Fuels[1].Kind = "moon_cheese"
	requireProblem(t, scenario.ValidateMaterials(materials()), "fuels[1].kind", "gas_burner, foam or straw")

	scenario = house()
	scenario.Compartments[1].Lining = "lava"
	requireProblem(t, scenario.ValidateMaterials(materials()), "compartments[1].lining", "gypsum or softwood")

	scenario = house()
	scenario.Moves[1].Fuel = engine.GasBurner
	requireProblem(t, scenario.ValidateMaterials(materials()), "moves[1].fuel", "foam or straw")
}

func TestValidateMoveIgnoresTime(t *testing.T) {
	scenario := house()
	require.NoError(t, scenario.ValidateMove(engine.Move{TS: -5, Opening: "door", Open: ptr(0.0)}))
	requireProblem(t, scenario.ValidateMove(engine.Move{Opening: "gate", Open: ptr(0.0)}), "opening", "no opening")
}

// requireProblem demands a one-line problem at the place that says the words.
func requireProblem(t *testing.T, err error, where, says string) {
	t.Helper()
	var problem *engine.Problem
	require.ErrorAs(t, err, &problem)
	assert.Equal(t, where, problem.Where)
	assert.Contains(t, problem.Error(), says)
	assert.NotContains(t, problem.Error(), "\n")
	assert.NotEmpty(t, problem.Do)
	assert.Equal(t, strings.ToLower(problem.Do[:1]), problem.Do[:1])
}
