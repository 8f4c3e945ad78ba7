package zone

import (
	"strconv"

	"lintel/engine"
)

// SetOpening moves an opening to a share over a time in seconds. One that has given
// way stays open.
func (m *Model) SetOpening(vent int, share, over float64) {
	v := &m.Vents[vent]
	if v.Failed {
		return
	}
	v.target = share
	if over <= 0 {
		v.Open = share
		return
	}
	v.speed = (share - v.Open) / over
	if v.speed < 0 {
		v.speed = -v.speed
	}
}

// AddFuel puts a lit package on the floor of a room.
func (m *Model) AddFuel(room int, kind engine.FuelKind, mass float64) error {
	if len(m.Fires) >= engine.MaxFuels+engine.MaxMoves {
		return engine.Bad("fuel", "would be package "+strconv.Itoa(len(m.Fires)+1)+" of this run", "add fewer packages")
	}
	f := Fire{Room: room, Kind: kind, Faces: 1, Ignite: m.Time}
	f.load(mass)
	f.light()
	m.Fires = append(m.Fires, f)
	return nil
}

// AddWater sprays litres into a room.
func (m *Model) AddWater(room int, litres float64) { m.Rooms[room].spray(litres) }

// SetWind changes the wind.
func (m *Model) SetWind(speed float64, on engine.Side) {
	m.WindMS = speed
	if on != "" {
		m.WindOn = on
	}
	m.blow()
}
