package zone

import "lintel/engine"

// These open the wall to its test.

// NewFace cuts a lining into cells.
func NewFace(area float64, lining engine.Lining, thickness, temp float64) Face {
	return newFace(area, lining, thickness, temp)
}

// Warm gives the face a flux.
func (f *Face) Warm(flux, dt float64) { f.warm(flux, dt) }

// Conduct carries heat inwards.
func (f *Face) Conduct(dt, outside float64) { f.conduct(dt, outside) }

// Face is the surface temperature by extrapolating the first two cells.
func (f *Face) Face() float64 {
	return f.Temp[0] + (f.Temp[0]-f.Temp[1])*f.size[0]/(f.size[0]+f.size[1])
}

// DryHeat and VapourHeat are the enthalpies of a kg of air and of water vapour.
func DryHeat(temp float64) float64    { return dryHeat(temp) }
func VapourHeat(temp float64) float64 { return vapourHeat(temp) }

// ConductBack is Conduct with what lies behind the face of a room.
func (m *Model) ConductBack(room, face int, dt float64) {
	f := &m.Rooms[room].Faces[face]
	f.conduct(dt, m.behind(f))
}

// ShineOut lets hot rooms radiate, and returns how opaque the smoke of the first is.
func (m *Model) ShineOut(dt float64) float64 {
	r := &m.Rooms[0]
	r.grey = r.greyness()
	m.shineOut(dt)
	return r.grey
}
