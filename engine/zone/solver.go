package zone

import (
	"math"

	"lintel/engine/internal/num"
)

const (
	// closeEnough is the volume error at which the pressures of a step are
	// taken, as a share of a room's volume. Chosen by us: what is left over is let
	// out again within drainS, so that errors that all point one way add up to
	// twice this.
	closeEnough = 2e-6

	// mostTries bounds Newton's method in one step; 1 is usual. Chosen by us.
	mostTries = 25

	// drainS is how fast a drift of the volumes is let out again. Chosen by us.
	drainS = 0.1

	// reliefPa is where a room gives way (a pane or door is pushed out): the cap
	// that keeps a sealed room on fire from absurd pressures. A light door or a
	// pane fails between 1 and 3.5 kPa (from memory, to be confirmed).
	reliefPa = 1500.0
)

// solver holds the one-equation-a-room balance.
type solver struct {
	count   int
	matrix  [maxRooms][maxRooms]float64 // symmetrical: of it the part up to the diagonal
	error   [maxRooms]float64           // K kg/s: what the room should still let out
	step    [maxRooms]float64
	before  [maxRooms]float64
	outside Column
	Tries   int // Newton steps of the run, to be divided by Model.Steps
}

const maxRooms = 12

// solvePressures finds the pressures at which every room lets out as much
// enthalpy as it gains, and leaves the flows in the vents.
func (m *Model) solvePressures(dt float64) {
	s := &m.solver
	s.count = len(m.Rooms)
	worst := m.balance(dt)
	for range mostTries {
		if worst < closeEnough {
			return
		}
		s.Tries++
		s.decompose()
		for i := range s.count {
			s.before[i] = m.Rooms[i].Pressure
		}
		worst = m.damped(dt, worst)
	}
}

// damped takes the Newton step, or the part of it that does not overshoot. The
// flow through every opening rises with the pressure across it, so the balance
// is the slope of a convex function: along the step, the sum of error times step
// falls to zero at its lowest point and turns negative beyond.
func (m *Model) damped(dt, worst float64) float64 {
	s := &m.solver
	start := s.along()
	part := 1.0
	for range mostHalvings {
		for i := range s.count {
			m.Rooms[i].Pressure = s.before[i] + float64(part*s.step[i])
			m.Rooms[i].now.column.Pressure = m.Rooms[i].Pressure
		}
		worst = m.balance(dt)
		now := s.along()
		if now > -0.7*start {
			break
		}
		part *= num.Clamp(start/(start-now), 0.1, 0.6)
	}
	return worst
}

func (s *solver) along() float64 {
	sum := 0.0
	for i := range s.count {
		sum += float64(s.error[i] * s.step[i])
	}
	return sum
}

// mostHalvings bounds how often one Newton step is shortened. Chosen by us.
const mostHalvings = 8

// balance computes all flows at the present pressures, the error of every room
// and the matrix of its derivatives. It returns the largest error, as the share
// of its volume that a room would be wrong by after dt.
func (m *Model) balance(dt float64) float64 {
	s := &m.solver
	for i := range s.count {
		room := &m.Rooms[i]
		s.error[i] = room.swell + room.slip + room.drift()
		clear(s.matrix[i][:i])
		s.matrix[i][i] = 1e-9
		m.relieve(room, i)
	}
	for i := range m.Vents {
		m.weigh(&m.Vents[i])
	}
	worst := 0.0
	for i := range s.count {
		wrong := math.Abs(s.error[i]) * dt / float64(Density*m.Rooms[i].Volume)
		worst = num.Max(worst, wrong)
	}
	return worst
}

// weigh adds one vent to the balance.
func (m *Model) weigh(v *Vent) {
	s := &m.solver
	heat, steepens := m.passVent(v)
	s.error[v.A] -= heat
	s.matrix[v.A][v.A] += steepens
	if v.B == OutsideRoom {
		return
	}
	s.error[v.B] += heat
	s.matrix[v.B][v.B] += steepens
	s.matrix[max(v.A, v.B)][min(v.A, v.B)] -= steepens
}

// passVent computes the flow of one vent from A to B: net enthalpy over heat
// capacity, and its growth with the pressure of A.
func (m *Model) passVent(v *Vent) (heat, steepens float64) {
	a, b := &m.Rooms[v.A].now.column, m.columnOf(v)
	share := v.free()
	if !v.Horizontal {
		slot := v.Slot
		slot.Width *= share
		if v.seeps {
			slot.Width *= v.seep
		}
		slot.Flow(a, b, &v.Flow)
		return v.Flow.heat, v.Flow.steepens
	}
	hole := v.Hole
	hole.Area *= share
	if v.AboveIsB {
		hole.Flow(a, b, m.under(v.A), m.over(v.B), &v.Exchange)
		return v.Exchange.heat, v.Exchange.steepens
	}
	hole.Flow(b, a, m.under(v.B), m.over(v.A), &v.Exchange)
	return -v.Exchange.heat, v.Exchange.steepens
}

// free is the share of the opening that gas can pass.
func (v *Vent) free() float64 { return v.Open + float64((1-v.Open)*v.shut) }

// relieve lets a room out above the pressure cap, and in below it.
func (m *Model) relieve(room *Room, i int) {
	s := &m.solver
	room.Out.Relief = 0
	beyond := math.Abs(room.Pressure) - reliefPa
	if beyond <= 0 {
		return
	}
	// A tenth above the cap lets out one room volume a second.
	gain := room.Volume / float64(0.1*reliefPa)
	room.Out.Relief = math.Copysign(gain*beyond, room.Pressure)
	s.error[i] -= float64(Density * room.Out.Relief)
	s.matrix[i][i] += float64(Density * gain)
}

// decompose solves matrix · step = error for the symmetric positive definite
// matrix by Cholesky's method without roots (L D Lᵀ).
func (s *solver) decompose() {
	n := s.count
	for j := range n {
		d := s.matrix[j][j]
		for k := range j {
			d -= float64(float64(s.matrix[j][k]*s.matrix[j][k]) * s.matrix[k][k])
		}
		d = num.Max(d, 1e-12)
		s.matrix[j][j] = d
		for i := j + 1; i < n; i++ {
			x := s.matrix[i][j]
			for k := range j {
				x -= float64(float64(s.matrix[i][k]*s.matrix[j][k]) * s.matrix[k][k])
			}
			s.matrix[i][j] = x / d
		}
	}
	for i := range n {
		x := s.error[i]
		for k := range i {
			x -= float64(s.matrix[i][k] * s.step[k])
		}
		s.step[i] = x
	}
	for i := n - 1; i >= 0; i-- {
		x := s.step[i] / s.matrix[i][i]
		for k := i + 1; k < n; k++ {
			x -= float64(s.matrix[k][i] * s.step[k])
		}
		s.step[i] = x
	}
}

// Tries is how many Newton steps the run has taken.
func (m *Model) Tries() int { return m.solver.Tries }
