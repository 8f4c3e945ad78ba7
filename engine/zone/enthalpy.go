package zone

import "math"

// The enthalpy of a kg of gas, J/kg: of air, a T + b T²/2, and of the water vapour
// in it so much more a kg as vapour takes to warm from the temperature at which
// heats of combustion are stated. Burning can so turn air to vapour without a step
// in temperature.
//
// Straight lines of heat capacity fitted by us (least squares of the relative error
// of the mean heat capacity from 298 K) to the polynomials of nitrogen, oxygen,
// argon and water of GRI-Mech 3.0, 273 to 1,800 K: enthalpy within half a per cent
// from 400 to 1,800 K and 1.3 per cent nearer the reference. Carbon dioxide is taken
// for air: a kg of it takes 4 per cent more heat to 1,500 K.
//
// Check: testdata/fire/gas_enthalpy.csv.
const (
	dryCap      = 942.3   // J/(kg K)
	dryCapRise  = 0.18865 // J/(kg K²)
	moistCap    = 710.0   // J/(kg K), vapour over air
	moistRise   = 0.44487 // J/(kg K²), the same
	statedAt    = 298.15  // kelvin
	moistStated = moistCap*statedAt + 0.5*moistRise*statedAt*statedAt
)

// dryHeat is the enthalpy of a kg of air.
func dryHeat(temp float64) float64 {
	return float64(temp * (dryCap + float64(0.5*dryCapRise*temp)))
}

// moistHeat is what a kg of vapour holds more than a kg of air.
func moistHeat(temp float64) float64 {
	return float64(temp*(moistCap+float64(0.5*moistRise*temp))) - moistStated
}

// vapourHeat is the enthalpy of a kg of water vapour.
func vapourHeat(temp float64) float64 { return dryHeat(temp) + moistHeat(temp) }

// warm is how much gas there is of which enthalpy: kg, J and kg of vapour in it.
type warm struct{ mass, heat, vapour float64 }

func (l *Layer) warm() warm { return warm{l.Mass, l.Heat, l.Of[Water]} }

// temp is in kelvin, and capacity J/(kg K): the root of c T + r T²/2 = H, whose
// discriminant is the heat capacity of the whole.
func (w warm) temp() (temp, capacity float64) {
	c := float64(dryCap*w.mass) + float64(moistCap*w.vapour)
	rise := float64(dryCapRise*w.mass) + float64(moistRise*w.vapour)
	heat := w.heat + float64(moistStated*w.vapour)
	whole := math.Sqrt(float64(c*c) + float64(2*rise*heat))
	return 2 * heat / (c + whole), whole / w.mass
}

// measure notes what the layers have come to, for the step that follows.
func (r *Room) measure() {
	for layer := range r.Gas {
		gas := &r.Gas[layer]
		temp, capacity := gas.warm().temp()
		r.next.temp[layer], r.next.capacity[layer] = temp, capacity
		r.next.volume[layer] = float64(gas.Mass*temp) / Density
	}
}

// volume is in m³.
func (w warm) volume() float64 {
	temp, _ := w.temp()
	return float64(w.mass*temp) / Density
}

func (w warm) plus(other warm, share float64) warm {
	return warm{
		mass: w.mass + float64(share*other.mass),
		heat: w.heat + float64(share*other.heat), vapour: w.vapour + float64(share*other.vapour),
	}
}

// Temp is in kelvin.
func (l *Layer) Temp() float64 {
	temp, _ := l.warm().temp()
	return temp
}

// Volume is in m³.
func (l *Layer) Volume() float64 { return l.warm().volume() }

// swells is how fast the room would grow without its vents, as mass times kelvin
// (volume times Density), K kg/s: by the heat and gas that its layers get, and by
// what crossed between them so far.
func (r *Room) swells(dt float64) float64 {
	low, high := r.Gas[Lower].warm(), r.Gas[Upper].warm()
	lowAfter, highAfter := low.plus(r.rate[Lower].warm(), dt), high.plus(r.rate[Upper].warm(), dt)
	if crossed := r.now.crossed[Lower]; crossed != 0 {
		share := dt * crossed / low.mass
		lowAfter, highAfter = lowAfter.plus(low, -share), highAfter.plus(low, share)
	}
	if crossed := r.now.crossed[Upper]; crossed != 0 {
		share := dt * crossed / high.mass
		lowAfter, highAfter = lowAfter.plus(high, share), highAfter.plus(high, -share)
	}
	grown := lowAfter.volume() + highAfter.volume() - r.now.volume[Lower] - r.now.volume[Upper]
	return float64(grown*Density) / dt
}

// slips notes how much of the step's growth to volume the pressures did not foresee.
// They take each stream to bring as much volume as it took from where it came; but
// cold gas that joins hot gas, whose heat capacity is the higher, grows by more than
// that shrinks. It changes slowly, so the next step allows for it.
func (m *Model) slips(room int, volume, dt float64) {
	r := &m.Rooms[room]
	grown := volume - r.now.volume[Lower] - r.now.volume[Upper]
	foreseen := m.solver.error[room] - r.slip - r.drift()
	r.slip = float64(grown*Density)/dt - foreseen
	r.over = volume/r.Volume - 1
}

// drift is what lets a room that is too full empty within drainS, K kg/s.
func (r *Room) drift() float64 {
	over := r.now.volume[Lower] + r.now.volume[Upper] - r.Volume
	return float64(over*Density) / drainS
}
