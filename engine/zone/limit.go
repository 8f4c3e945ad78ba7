package zone

import (
	"math"

	"lintel/engine/internal/num"
)

const (
	// leastOxygen is the mole fraction below which a flame in cold gas dies, and
	// freeBurn the temperature at which the limit has fallen to nothing: the
	// straight-line rule X = 0.135 (T_fb - T)/(T_fb - T_0), T_fb 600 °C (from
	// memory, to be confirmed). It gives 13.5 per cent at 20 °C and 9 at 200 °C;
	// in closed rooms burners went out at 8 to 13 per cent in the lower half at
	// 130 to 210 °C (ulfsri/fsri-compartments-2018).
	leastOxygen = 0.135
	freeBurn    = 873.0
	coldFlame   = 293.0

	// leastFuel is the heat of the fuel in a kg of gas below which a flame does
	// not cross it when cold: 2.8 per cent of methane by mass. It falls with
	// temperature as the oxygen limit does. (Lower flammable limit of methane 5
	// per cent by volume; from memory, to be confirmed.)
	leastFuel = 1.4e6
)

// cold is how far a gas is from burning at any mixture: 1 at room temperature,
// 0 at 600 °C.
func cold(temp float64) float64 { return num.Clamp((freeBurn-temp)/(freeBurn-coldFlame), 0, 1) }

// breathes is 0 where a flame in a stream of gas of this oxygen mole fraction
// and temperature would die, 1 where it lives, with a smooth rise between. The
// rise is set a little below the rule, by the mean of the closed rooms.
func breathes(moles, temp float64) float64 {
	limit := leastOxygen * cold(temp)
	return num.Smooth(moles, float64(0.78*limit)+0.002, float64(1.08*limit)+0.006)
}

// feeds is the same for fuel: heat in J per kg of gas.
func feeds(heat, temp float64) float64 {
	limit := leastFuel * cold(temp)
	return num.Smooth(heat, float64(0.7*limit)+traceHeat, float64(1.3*limit)+8e4)
}

// lights is 1 where gas burns without a flame near it: fuel gas of solids
// lights of itself from about 500 to 600 °C (carbon monoxide 609 °C, methane 537
// to 600 °C, propane 450 °C; from memory, to be confirmed).
func lights(temp float64) float64 { return num.Smooth(temp, 753, 873) }

// lesser is a smooth num.Min(1, ratio): ratio/(1+ratio⁴)^¼.
func lesser(ratio float64) float64 {
	if ratio > 1e3 {
		return 1
	}
	return ratio / math.Sqrt(math.Sqrt(1+fourth(ratio)))
}
