package zone

import (
	"math"
	"strconv"

	"lintel/engine"
	"lintel/engine/internal/num"
)

// New builds the model of a scenario, which must have passed its own Validate.
// Materials hold the fuels and linings that it names.
func New(sc engine.Scenario, materials engine.Materials) (*Model, error) {
	m := &Model{parts: 1, Ambient: sc.Ambient.TempC + Kelvin, WindMS: sc.Ambient.WindMS, WindOn: sc.Ambient.WindFrom}
	m.density = Density / m.Ambient
	m.air = air(1, m.Ambient)
	m.airTemp = m.air.Temp()
	index := map[string]int{engine.Outside: OutsideRoom}
	for i, c := range sc.Compartments {
		where := "compartments[" + strconv.Itoa(i) + "]"
		room, err := newRoom(c, materials, m.Ambient, where)
		if err != nil {
			return nil, err
		}
		index[c.ID] = i
		m.Rooms = append(m.Rooms, room)
	}
	for _, o := range sc.Openings {
		m.Vents = append(m.Vents, newVent(o, index, sc.Compartments))
	}
	for i, c := range sc.Compartments {
		m.Vents = append(m.Vents, newCrack(c, i))
	}
	m.Fires = make([]Fire, 0, len(sc.Fuels)+len(sc.Moves)+8)
	for i, f := range sc.Fuels {
		fire, err := newFire(f, index, materials, "fuels["+strconv.Itoa(i)+"]")
		if err != nil {
			return nil, err
		}
		m.Fires = append(m.Fires, fire)
	}
	m.layFloors(sc)
	m.blow()
	m.look(StepS)
	m.openBooks()
	return m, nil
}

func (m *Model) openBooks() {
	for i := range m.Rooms {
		for layer := range m.Rooms[i].Gas {
			m.Books.Start.gain(&m.Rooms[i].Gas[layer], 1)
		}
	}
}

// usualLeak is the area of cracks in a m² of wall of average tightness (Klote et
// al. 2012, table quoted in the CFAST User Guide).
const usualLeak = 1.7e-4

func newRoom(c engine.Compartment, materials engine.Materials, ambient float64, where string) (Room, error) {
	r := Room{
		Width: c.WidthM, Depth: c.DepthM, Height: c.HeightM, Floor: c.FloorM,
		Area: c.WidthM * c.DepthM, Volume: c.WidthM * c.DepthM * c.HeightM,
		lastingS: lastingS * math.Sqrt(c.HeightM),
	}
	lining, ok := findLining(materials.Linings, c.Lining)
	if !ok {
		return r, engine.Bad(where+".lining", "is "+`"`+c.Lining+`"`+", which is not in the library", "use a lining of content/linings")
	}
	thickness := lining.ThicknessM
	if c.LiningM != nil {
		thickness = *c.LiningM
	}
	walls := (r.Width + r.Depth) * r.Height // each band is half of all four walls
	areas := [faceCount]float64{Ceiling: r.Area, HighWall: walls, LowWall: walls, Ground: r.Area}
	for i, area := range areas {
		r.Faces[i] = newFace(area, lining, thickness, ambient)
		r.inside += area
	}
	if lining.Fuel != "" {
		kind, found := findFuel(materials.Fuels, lining.Fuel)
		if !found {
			return r, engine.Bad(where+".lining", "burns as "+`"`+lining.Fuel+`"`+", which is not in the library", "add the fuel to content/fuels")
		}
		r.wood = &kind
	}
	r.fill(c.Initial, ambient)
	return r, nil
}

// fill sets the first gas: air, unless the scenario says otherwise.
func (r *Room) fill(initial *engine.Initial, ambient float64) {
	upper, lower, share := ambient, ambient, 1-film
	oxygen, fuel := 1.0, 0.0
	if initial != nil {
		upper = valueOr(initial.UpperC, ambient-Kelvin) + Kelvin
		lower = valueOr(initial.LowerC, ambient-Kelvin) + Kelvin
		share = valueOr(initial.InterfaceM, r.Height*share) / r.Height
		share = num.Min(max(share, film), 1-film)
		oxygen = valueOr(initial.O2, airOxygen*molesOfOxygen) / (airOxygen * molesOfOxygen)
		fuel = valueOr(initial.FuelGas, 0)
	}
	r.Gas[Lower] = air(r.Volume*share, lower)
	r.Gas[Upper] = air(r.Volume*(1-share), upper)
	gas := &r.Gas[Upper]
	gas.Of[Oxygen] *= oxygen
	// Gas given from the start is like that of smouldering wood (chosen by us).
	gas.Of[Fuel] = fuel * gas.Mass
	gas.Of[Tar] = 0.1 * gas.Of[Fuel]
	gas.Of[FuelHeat] = gas.Of[Fuel] * 14e6
	gas.Of[FuelSoot] = gas.Of[Fuel] * 0.015
	gas.Of[FuelCO] = gas.Of[Fuel] * 0.005
	r.measure()
	for i := range r.Faces {
		temp := upper
		if i == LowWall || i == Ground {
			temp = lower
		}
		// Walls of a room that starts hot are warm on the inside only.
		r.Faces[i].warmInside(temp, ambient)
	}
}

// warmInside gives a face a straight fall of temperature from inside to outside.
func (f *Face) warmInside(inside, outside float64) {
	whole, depth := 0.0, 0.0
	for _, size := range f.size {
		whole += size
	}
	for i, size := range f.size {
		f.Temp[i] = inside + float64(float64((outside-inside)*(depth+float64(0.5*size)))/whole)
		depth += size
	}
}

func valueOr(p *float64, otherwise float64) float64 {
	if p == nil {
		return otherwise
	}
	return *p
}

func findLining(list []engine.Lining, id string) (engine.Lining, bool) {
	for _, l := range list {
		if l.ID == id {
			return l, true
		}
	}
	return engine.Lining{}, false
}

func findFuel(list []engine.FuelKind, id string) (engine.FuelKind, bool) {
	for _, k := range list {
		if k.ID == id {
			return k, true
		}
	}
	return engine.FuelKind{}, false
}
