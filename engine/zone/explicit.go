package zone

// heatRatio is that of air: constant pressure over constant volume.
const heatRatio = 1.4

// atmosphere in Pa.
const atmosphere = 101325.0

// StepExplicit moves on by dt with the same equations as Step, but steps the
// pressure of each room in time instead of solving for it:
//
//	dP/dt = γ p / V · (volume that the room should still let out a second)
//
// It is the plain way, and the control for speed: it needs steps of some tens of
// microseconds, because a change of pressure runs off through an opening in less
// than a millisecond.
func (m *Model) StepExplicit(dt float64) {
	m.begin(dt)
	m.solver.count = len(m.Rooms)
	m.balance(dt)
	for i := range m.Rooms {
		room := &m.Rooms[i]
		room.Pressure += dt * heatRatio * atmosphere / room.Volume * m.solver.error[i] / Density
	}
	m.finish(dt)
}
