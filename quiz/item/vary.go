package item

import (
	"math/rand/v2"
	"slices"

	"lintel/engine"
)

// scene draws one scene of the family: its building and fire with every knob set.
func (f *Family) scene(draw *rand.Rand) (engine.Scenario, error) {
	scene := f.Scene
	scene.Compartments = slices.Clone(scene.Compartments)
	scene.Openings = slices.Clone(scene.Openings)
	scene.Fuels = slices.Clone(scene.Fuels)
	scene.Moves = slices.Clone(scene.Moves)
	for i, v := range f.Vary {
		if err := v.turn(&scene, draw); err != nil {
			return scene, engine.Bad(f.where("vary", i), err.Error(), "name a knob and something of the scene that it can turn")
		}
	}
	return scene, nil
}

// draw picks one of the steps from Low to High.
func (v Vary) draw(draw *rand.Rand) float64 {
	steps := 0
	if v.Step > 0 {
		steps = int((v.High-v.Low)/v.Step + 0.5)
	}
	return round(v.Low + float64(float64(draw.IntN(steps+1))*v.Step))
}

// round keeps a tenth of a millimetre, so that a width reads 0.85 and not
// 0.8500000000000001.
func round(x float64) float64 {
	const fine = 1e4
	if x < 0 {
		return -round(-x)
	}
	return float64(int64(float64(x*fine)+0.5)) / fine
}

// turn sets one knob of a scene that is ours alone to change.
func (v Vary) turn(scene *engine.Scenario, draw *rand.Rand) error {
	switch v.Knob {
	case FuelOf, FuelRoom, WindSide:
		return turnWord(scene, v, draw)
	}
	x := v.draw(draw)
	switch v.Knob {
	case WindSpeed:
		scene.Ambient.WindMS = x
	case AirTemp:
		scene.Ambient.TempC = x
	case MoveTime:
		for i := range scene.Moves {
			scene.Moves[i].TS = round(scene.Moves[i].TS + x)
		}
	case MoveWater:
		for i, m := range scene.Moves {
			scene.Moves[i].WaterL = scaled(m.WaterL, x)
		}
	case MoveWind:
		for i := range scene.Moves {
			if scene.Moves[i].WindMS != nil {
				scene.Moves[i].WindMS = &x
			}
		}
	case RoomSize:
		return turnRoom(scene, v.ID, x)
	case FuelMass, BurnerPower:
		return turnFuel(scene, v, x)
	case OpeningWidth, OpeningHeight, OpeningSill, OpeningShare:
		return turnOpening(scene, v, x)
	default:
		return engine.Bad("", "turns "+string(v.Knob)+", which is no knob", "use "+engine.OneOf(Knobs))
	}
	return nil
}

func turnRoom(scene *engine.Scenario, id string, factor float64) error {
	i := slices.IndexFunc(scene.Compartments, func(c engine.Compartment) bool { return c.ID == id })
	if i < 0 {
		return missing("compartment", id)
	}
	room := &scene.Compartments[i]
	room.WidthM, room.DepthM = round(room.WidthM*factor), round(room.DepthM*factor)
	return nil
}

func fuelOf(scene *engine.Scenario, id string) (*engine.Fuel, error) {
	i := slices.IndexFunc(scene.Fuels, func(f engine.Fuel) bool { return f.ID == id })
	if i < 0 {
		return nil, missing("fuel", id)
	}
	return &scene.Fuels[i], nil
}

func turnWord(scene *engine.Scenario, v Vary, draw *rand.Rand) error {
	if len(v.Words) == 0 {
		return engine.Bad("", "has no words to draw from", "list some")
	}
	word := v.Words[draw.IntN(len(v.Words))]
	if v.Knob == WindSide {
		scene.Ambient.WindFrom = engine.Side(word)
		return nil
	}
	fuel, err := fuelOf(scene, v.ID)
	if err != nil {
		return err
	}
	if v.Knob == FuelOf {
		fuel.Kind = word
	} else {
		fuel.In = word
	}
	return nil
}

func turnFuel(scene *engine.Scenario, v Vary, factor float64) error {
	fuel, err := fuelOf(scene, v.ID)
	if err != nil {
		return err
	}
	fuel.MassKg = scaled(fuel.MassKg, factor)
	fuel.HRRKW = slices.Clone(fuel.HRRKW)
	for k := range fuel.HRRKW {
		fuel.HRRKW[k][1] = round(fuel.HRRKW[k][1] * factor)
	}
	return nil
}

func turnOpening(scene *engine.Scenario, v Vary, x float64) error {
	i := slices.IndexFunc(scene.Openings, func(o engine.Opening) bool { return o.ID == v.ID })
	if i < 0 {
		return missing("opening", v.ID)
	}
	opening := &scene.Openings[i]
	switch v.Knob {
	case OpeningWidth:
		opening.WidthM = x
	case OpeningHeight:
		opening.HeightM = x
	case OpeningSill:
		opening.SillM = x
	case OpeningShare:
		opening.Open = &x
	}
	return nil
}

func missing(what, id string) error {
	return engine.Bad("", "turns the "+what+" "+id+", which the scene has not", "name one of the scene's")
}

// scaled is a new number, for the family's own must not change.
func scaled(x *float64, factor float64) *float64 {
	if x == nil {
		return nil
	}
	product := round(*x * factor)
	return &product
}
