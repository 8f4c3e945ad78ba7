package zone

import (
	"lintel/engine"
	"lintel/engine/internal/num"
)

// mostDrawn is the share of a layer that one step may take away. Chosen by us.
const mostDrawn = 0.9

// look refreshes what the step needs to know of each room.
func (m *Model) look(dt float64) {
	m.solver.outside = Still(m.Ambient)
	for i := range m.Rooms {
		m.Rooms[i].look(m.density, dt)
		m.Rooms[i].feel(m.turns)
	}
}

func (r *Room) look(outside, dt float64) {
	now := &r.now
	now.measured = r.next
	now.barren = r.barren()
	for layer := range r.Gas {
		gas := &r.Gas[layer]
		r.remember(layer, now.temp[layer], dt)
		now.oxygen[layer] = gas.OxygenMoles()
		now.column.Density[layer] = Density / now.temp[layer]
		now.oxygenLeft[layer] = float64(mostBurned*gas.Of[Oxygen]) / dt
		now.heatLeft[layer] = float64(mostBurned*gas.Of[FuelHeat]) / dt
		now.left[layer] = float64(mostDrawn*gas.Mass) / dt
	}
	now.column.Temp = now.temp
	now.share = now.volume[Lower] / (now.volume[Lower] + now.volume[Upper])
	now.plug = num.Smooth(1-now.share, 0.005, 0.05)
	now.sink = num.Smooth(now.share, 0.005, 0.05)
	now.column.Floor = r.Floor
	now.column.Interface = r.Floor + float64(r.Height*now.share)
	now.column.Pressure = r.Pressure
	now.column.Air = outside
	now.column.prepare()
	now.alight, now.pilot, now.flameW = now.pilot, 0, 0
	for i := range r.Faces {
		r.Faces[i].flux = 0
	}
	now.drawn, now.vented, now.crossed = [2]float64{}, [2]float64{}, [2]float64{}
	r.rate = [2]Layer{}
	out := &r.Out
	out.BurnW, out.LayerW = 0, 0
}

// Interface is the height of the layers' meeting above the floor, m.
func (r *Room) Interface() float64 { return float64(r.Height * r.now.share) }

// Layered reports whether there are two layers to be told apart: they differ by
// more than 3 K and neither is a mere film. Chosen by us.
func (r *Room) Layered() bool {
	return r.now.temp[Upper]-r.now.temp[Lower] > 3 && r.now.share < 0.985
}

// columnOf is what lies beyond a vertical vent, or at a horizontal one's other
// side.
func (m *Model) columnOf(v *Vent) *Column {
	if v.B != OutsideRoom {
		return &m.Rooms[v.B].now.column
	}
	m.solver.outside.Pressure = v.windPa
	return &m.solver.outside
}

// under is the density of the gas below a horizontal opening in the ceiling of
// a room.
func (m *Model) under(room int) float64 {
	if room == OutsideRoom {
		return m.density
	}
	r := &m.Rooms[room]
	plug := r.now.plug
	temp := float64(plug*r.now.temp[Upper]) + float64((1-plug)*r.now.temp[Lower])
	return Density / temp
}

// over is the density of the gas above a horizontal opening in the floor of a
// room.
func (m *Model) over(room int) float64 {
	if room == OutsideRoom {
		return m.density
	}
	r := &m.Rooms[room]
	sink := r.now.sink
	temp := float64(sink*r.now.temp[Lower]) + float64((1-sink)*r.now.temp[Upper])
	return Density / temp
}

// Wind pressure coefficients of a low building: +0.7 on the windward wall, -0.3
// on the lee wall, -0.6 on the side walls and the roof (usual design values;
// from memory, to be confirmed).
const (
	windward = 0.7
	leeward  = -0.3
	sideways = -0.6
)

// blow sets the wind pressure of every vent: ½ρU² times the side's coefficient.
func (m *Model) blow() {
	stagnation := float64(0.5*m.density) * float64(m.WindMS*m.WindMS)
	for i := range m.Vents {
		v := &m.Vents[i]
		v.windPa = 0
		if v.B == OutsideRoom && !v.Crack && m.WindOn != "" {
			v.windPa = stagnation * windOn(v.Side, v.Horizontal, m.WindOn)
		}
	}
}

func windOn(side engine.Side, roof bool, wind engine.Side) float64 {
	switch {
	case roof:
		return sideways
	case side == "":
		return 0
	case side == wind:
		return windward
	case opposite(side) == wind:
		return leeward
	}
	return sideways
}

func opposite(side engine.Side) engine.Side {
	switch side {
	case engine.Alpha:
		return engine.Charlie
	case engine.Charlie:
		return engine.Alpha
	case engine.Bravo:
		return engine.Delta
	}
	return engine.Bravo
}
