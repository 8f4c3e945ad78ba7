package zone

import (
	"math"

	"lintel/engine/internal/num"
)

const (
	// mixS is how long gas that could burn inside a layer takes to do so where
	// flame fills it: turbulent mixing of a room of a metre, growing with the
	// square root of its size (Froude). Chosen by us.
	mixS = 0.8

	// spreadS is how long flame takes to fill a room of a metre, lit at one
	// point; flame in a layer runs at about a metre a second. Chosen by us.
	spreadS = 0.7
	fadeS   = 1.2

	// lastingS is the memory of the temperature by which a layer of a room of a metre
	// burns inside itself, growing with the square root of its size: flame there holds
	// to hot pockets and walls, and neither lives nor dies by the mean of the instant.
	// Without it a starved layer goes out and lights again every few seconds. Chosen
	// by us.
	lastingS = 4.0
)

// burnLayers burns what can burn inside the layers, and moves each room's flame.
func (m *Model) burnLayers(dt float64) {
	for i := range m.Rooms {
		r := &m.Rooms[i]
		r.tendFlame(dt)
		for layer := range r.Gas {
			m.burnLayer(r, layer, dt)
			m.crack(r, layer, dt)
		}
	}
}

// remember follows the temperature of a layer: up at once, down over seconds.
func (r *Room) remember(layer int, temp, dt float64) {
	r.lasting[layer] += float64(dt / (dt + r.lastingS) * (temp - r.lasting[layer]))
	r.lasting[layer] = num.Max(r.lasting[layer], temp)
}

// ripe is 0 to 1: how readily a layer burns inside itself.
func (r *Room) ripe(layer int) float64 {
	gas := &r.Gas[layer]
	if gas.Of[FuelHeat] <= float64(traceHeat*gas.Mass) {
		return 0
	}
	temp := r.lasting[layer]
	return breathes(r.now.oxygen[layer], temp) * feeds(gas.Fraction(FuelHeat), temp)
}

// tendFlame moves the share of burnable gas that flame has reached: logistic
// growth from the fires' flames, from embers, from flame next door and from gas
// hot enough to light itself.
func (r *Room) tendFlame(dt float64) {
	upper, lower := r.ripe(Upper), r.ripe(Lower)
	ready := num.Max(upper, num.Max(0.5*lower, r.jetReady))
	seed := num.Max(r.now.pilot, lights(r.now.temp[Upper]))
	seed = num.Max(seed, r.jetSeed)
	size := num.Max(r.Width, num.Max(r.Depth, r.Height))
	grow := float64(num.Max(0, r.Flame-deadFlame)*(1-r.Flame)*ready)/float64(spreadS*size) + float64(0.3*seed*ready*(1-r.Flame))
	die := float64(r.Flame*(1-ready)) / fadeS
	r.Flame = num.Clamp(r.Flame+float64(dt*(grow-die)), 0, 1)
	r.jetReady, r.jetSeed = 0, 0
}

func (m *Model) burnLayer(r *Room, layer int, dt float64) {
	gas := &r.Gas[layer]
	if r.Flame < 1e-4 || gas.Of[FuelHeat] <= 0 {
		return
	}
	speed := r.Flame * r.ripe(layer) / float64(mixS*math.Sqrt(r.Height))
	if speed <= 0 {
		return
	}
	fuel := gas.Of[FuelHeat] / OxygenHeat
	burn := float64(speed * num.Min(fuel, gas.Of[Oxygen]))
	burn = num.Min(burn, r.burnable(layer, layer))
	if burn <= 0 {
		return
	}
	starved := num.Smooth(fuel/floor(gas.Of[Oxygen], 1e-12), 0.7, 2)
	r.Out.LayerW += m.burnt(r, layer, layer, burn, starved, dt)
}
