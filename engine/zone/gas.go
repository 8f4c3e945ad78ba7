package zone

import "lintel/engine/internal/num"

// Physical constants and those of air, which all gas is taken for.
const (
	Gravity   = 9.80665     // m/s², standard value
	HeatCap   = 1012.0      // J/(kg K), air, in the formulas of plumes and streams (CFAST Tech. Ref.)
	Density   = 352.8       // kg K/m³: density times temperature at 101 325 Pa (M = 28.96 g/mol)
	Boltzmann = 5.670374e-8 // W/(m² K⁴), Stefan-Boltzmann
	Kelvin    = 273.15

	// OxygenHeat is the heat released per kg of oxygen used, nearly the same for
	// all fuels (Huggett 1980, as used by CFAST Tech. Ref.).
	OxygenHeat = 13.1e6

	airOxygen     = 0.2314          // mass fraction in air: 0.2095 by volume
	molesOfOxygen = 28.96 / 31.9988 // mass fraction to mole fraction
	molesOfCO     = 28.96 / 28.010
	molesOfWater  = 28.96 / 18.015
)

// The species that a layer carries beside the nitrogen and carbon dioxide that
// make up the rest. Fuel is all combustible gas and tar; Tar is the part of it
// that hangs as pale droplets. The last three travel with the fuel: the heat it
// would release, and the soot and carbon monoxide it would leave, with plenty of
// air.
const (
	Oxygen = iota
	Fuel
	Tar
	CO
	Soot
	Water
	FuelHeat // J
	FuelSoot
	FuelCO
	speciesCount
)

// The two layers of a room.
const (
	Lower = 0
	Upper = 1
)

// Layer is an amount of gas: mass in kg, enthalpy in J (see enthalpy.go), and of
// each species its kg (FuelHeat: its J).
type Layer struct {
	Mass float64
	Heat float64
	Of   [speciesCount]float64
}

// Fraction is the mass fraction of a species.
func (l *Layer) Fraction(species int) float64 { return l.Of[species] / l.Mass }

// OxygenMoles is the mole fraction of oxygen.
func (l *Layer) OxygenMoles() float64 { return float64(molesOfOxygen*l.Of[Oxygen]) / l.Mass }

// COMoles is the mole fraction of carbon monoxide.
func (l *Layer) COMoles() float64 { return float64(molesOfCO*l.Of[CO]) / l.Mass }

// Concentration is kg of a species in a cubic metre.
func (l *Layer) Concentration(species int) float64 { return l.Of[species] / l.Volume() }

// add gives amount kg of gas like that of from.
func (l *Layer) add(from *Layer, amount float64) {
	if amount == 0 {
		return
	}
	l.Mass += float64(amount)
	l.mix(from, amount/from.Mass)
}

// gain adds a share of another amount of gas, or so many seconds of a stream of it.
func (l *Layer) gain(from *Layer, share float64) {
	l.Mass += float64(share * from.Mass)
	l.mix(from, share)
}

// mix adds a share of what another amount of gas holds. It is half of what moves
// gas about and so written out: a loop over the species takes twice as long.
func (l *Layer) mix(from *Layer, share float64) {
	l.Heat += float64(share * from.Heat)
	to, of := &l.Of, &from.Of
	to[Oxygen] += float64(share * of[Oxygen])
	to[Fuel] += float64(share * of[Fuel])
	to[Tar] += float64(share * of[Tar])
	to[CO] += float64(share * of[CO])
	to[Soot] += float64(share * of[Soot])
	to[Water] += float64(share * of[Water])
	to[FuelHeat] += float64(share * of[FuelHeat])
	to[FuelSoot] += float64(share * of[FuelSoot])
	to[FuelCO] += float64(share * of[FuelCO])
}

// air returns volume m³ of clean air at a temperature in kelvin.
func air(volume, temp float64) Layer {
	l := Layer{Mass: volume * Density / temp}
	l.Heat = l.Mass * dryHeat(temp)
	l.Of[Oxygen] = l.Mass * airOxygen
	return l
}

func fourth(x float64) float64 {
	square := float64(x * x)
	return float64(square * square)
}

// floor keeps a divisor away from zero.
func floor(x, least float64) float64 { return num.Max(x, least) }
