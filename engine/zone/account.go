package zone

import (
	"lintel/engine/internal/num"
)

// Books holds what went in and out of the building, for audit: what is in the
// rooms must equal Start + In - Out for mass and each species, and Start + In -
// Out + Released - Lost for enthalpy.
type Books struct {
	Start    Layer
	In       Layer   // through openings, from fuels and as steam, and made by burning
	Out      Layer   // through openings, and used by burning
	Released float64 // J of burning inside
	Lost     float64 // J lost to faces and to water, and radiated by plumes, less what of it came back
}

// feed gives a room's layer a stream of gas in kg/s made from nothing in the room
// (fuel gas, steam).
func (m *Model) feed(r *Room, layer int, stream *Layer, dt float64) {
	r.rate[layer].gain(stream, 1)
	m.Books.In.gain(stream, dt)
}

// part is a stream of amount kg/s of a layer's gas.
func (l *Layer) part(amount float64) Layer {
	var p Layer
	p.add(l, amount)
	return p
}

// move carries amount kg/s of gas from one layer of a room to the other.
func (r *Room) move(from int, amount float64) {
	if amount <= 0 {
		return
	}
	amount = num.Min(amount, 0.4*r.budget(from))
	r.spend(from, amount)
	r.now.crossed[from] += amount
}

// clear enters what was drawn from the layers of a room, and what crossed between
// them, all of one composition a layer and so summed up before.
func (m *Model) clear(r *Room, dt float64) {
	for layer := range r.Gas {
		gas := &r.Gas[layer]
		if crossed := r.now.crossed[layer]; crossed > 0 {
			r.rate[1-layer].add(gas, crossed)
			r.now.drawn[layer] += crossed
		}
		r.rate[layer].add(gas, -r.now.drawn[layer])
		if vented := r.now.vented[layer]; vented > 0 {
			m.Books.Out.add(gas, vented*dt)
		}
	}
}

// budget is what may still be drawn from a layer in this step, kg/s.
func (r *Room) budget(layer int) float64 { return num.Max(0, r.now.left[layer]) }

func (r *Room) spend(layer int, amount float64) { r.now.left[layer] -= amount }

// burnt turns share (a second) of a layer's fuel, with oxygen kg/s of a layer,
// into products and heat in the upper layer. starved is 0 with plenty of air and
// 1 with next to none: it raises the soot and carbon monoxide that are left.
func (m *Model) burnt(r *Room, fuelFrom, oxygenFrom int, oxygen, starved, dt float64) float64 {
	fuel := &r.Gas[fuelFrom]
	watts := float64(OxygenHeat * oxygen)
	share := watts / fuel.Of[FuelHeat]
	r.now.oxygenLeft[oxygenFrom] -= oxygen
	r.now.heatLeft[fuelFrom] -= watts
	r.spend(oxygenFrom, oxygen)
	r.spend(fuelFrom, float64(share*fuel.Of[Fuel]))
	var used Layer
	takeFuel(&used, fuel, share)
	used.Heat = float64(used.Mass * dryHeat(r.now.temp[fuelFrom]))
	r.rate[fuelFrom].gain(&used, -1)
	breath := float64(oxygen * dryHeat(r.now.temp[oxygenFrom]))
	r.rate[oxygenFrom].Mass -= oxygen
	r.rate[oxygenFrom].Of[Oxygen] -= oxygen
	r.rate[oxygenFrom].Heat -= breath
	if oxygenFrom == Lower {
		r.move(Lower, r.alongWith(oxygen))
	}
	up := &r.rate[Upper]
	up.Mass += used.Mass + oxygen
	up.Heat += used.Heat + breath
	m.leave(r, &used, starved, dt)
	m.Books.Out.Of[Oxygen] += float64(dt * oxygen)
	m.release(r, watts, dt)
	return watts
}

// alongWith is the gas of the lower layer, kg/s, that rises with oxygen burned from
// it where the upper layer is a film: the products alone would make that thousands
// of degrees hot. Into a deep layer the plume and the jets have brought it already.
func (r *Room) alongWith(oxygen float64) float64 {
	film := num.Smooth(r.now.share, 0.5, 0.8)
	return film * oxygen / floor(r.Gas[Lower].Fraction(Oxygen), 0.02)
}

// takeFuel sets the fuel species (and the mass) of used to a share of a layer's.
func takeFuel(used, fuel *Layer, share float64) {
	used.Mass = float64(share * fuel.Of[Fuel])
	for _, i := range fuelSpecies {
		used.Of[i] = float64(share * fuel.Of[i])
	}
}

var fuelSpecies = [...]int{Fuel, Tar, FuelHeat, FuelSoot, FuelCO}

const (
	// starvedSoot and starvedCO: soot rises to at most two and a half times, and
	// carbon monoxide to 0.2 kg a kg of fuel, as air runs short (global
	// equivalence ratio correlations of Tewarson, and 0.2 kg/kg of Gottuk; from
	// memory, to be confirmed).
	starvedSoot = 1.5
	starvedCO   = 0.20

	// waterMade is kg of water vapour from a kg of burnt fuel gas: between wood
	// (0.55) and polystyrene (0.69) by their hydrogen. Chosen by us. A burner's
	// methane, at burnerHeat, leaves burnerWater: CH4 + 2 O2 to CO2 + 2 H2O, 36 kg
	// from 16.
	waterMade   = 0.55
	burnerWater = 2.25
	burnerHeat  = 50e6 // J/kg, see burnerGas

	// solidHeat is the most that gas of solids releases, J/kg (polystyrene). The gas
	// of a burner mixed with theirs lies between; the line between is chosen by us.
	solidHeat = 27e6
)

// leave puts what burning leaves into the upper layer and enters it in the books.
func (m *Model) leave(r *Room, used *Layer, starved, dt float64) {
	up := &r.rate[Upper]
	smoke := float64(used.Of[FuelSoot] * (1 + float64(starvedSoot*starved)))
	soot := float64(smoke * blackShare(used.Of[FuelSoot]/floor(used.Mass, 1e-12), starved))
	up.Of[Tar] += smoke - soot
	m.Books.In.Of[Tar] += float64(dt * (smoke - soot))
	monoxide := used.Of[FuelCO] + float64(starvedCO*starved*used.Mass)
	up.Of[Soot] += soot
	up.Of[CO] += monoxide
	water := waterOf(used)
	up.Of[Water] += water
	books := &m.Books
	books.In.Of[Soot] += float64(dt * soot)
	books.In.Of[CO] += float64(dt * monoxide)
	books.In.Of[Water] += float64(dt * water)
	for _, i := range fuelSpecies {
		books.Out.Of[i] += float64(dt * used.Of[i])
	}
}

// waterOf is the water that burning a stream of fuel gas makes, kg/s.
func waterOf(used *Layer) float64 {
	beyond := used.Of[FuelHeat] - float64(solidHeat*used.Mass)
	share := num.Clamp(beyond/floor((burnerHeat-solidHeat)*used.Mass, 1e-9), 0, 1)
	return float64(used.Mass * num.Lerp(waterMade, burnerWater, share))
}

// blackShare is the share by mass of black carbon in the smoke of a flame; the
// rest is pale organic matter. That of flaming wood and grass is 0.158 (elemental
// share of carbon 0.22, albedo 0.75: Reid et al. 2005, in testdata/optics), and of
// building materials and foam that left 0.3 to 2.3 per cent of their mass as smoke
// an eighth and less (0.03 to 0.3 per cent black; Dod et al., LBL-20654, 1985,
// abstract). That of plastics with ten times the soot of wood is nearly all black
// (elemental share 0.8 to 0.95; from memory, to be confirmed). The rise between is
// chosen by us. A starved flame burns its organic matter less but cracks it more
// and leaves more black (chosen by us).
func blackShare(yield, starved float64) float64 {
	share := num.Lerp(0.158, 0.9, num.Smooth(yield, 0.02, 0.12))
	return share + float64((0.92-share)*0.8*starved)
}

// release puts heat of burning into the upper layer.
func (m *Model) release(r *Room, watts, dt float64) {
	r.rate[Upper].Heat += watts
	r.Out.BurnW += watts
	m.Books.Released += float64(dt * watts)
}

// burnable is the oxygen that may still be burned, kg/s, with oxygen of one
// layer and fuel of another in this step: however many flames ask, they cannot
// overdraw.
func (r *Room) burnable(oxygenFrom, fuelFrom int) float64 {
	return num.Max(0, num.Min(r.now.oxygenLeft[oxygenFrom], r.now.heatLeft[fuelFrom]/OxygenHeat))
}

// mostBurned is the share of a layer's oxygen or fuel that one step may burn.
// Chosen by us.
const mostBurned = 0.3

// crack turns tar in hot gas into gas and soot, so that choked smoke darkens
// where it is hot: tar breaks up within seconds from about 500 to 800 °C, an
// eighth of it to soot (chosen by us after the kinetics of wood tar; from memory,
// to be confirmed).
func (m *Model) crack(r *Room, layer int, dt float64) {
	gas := &r.Gas[layer]
	speed := 0.25 * num.Smooth(r.now.temp[layer], 723, 1073)
	if speed == 0 || gas.Of[Tar] <= 0 || gas.Of[Fuel] <= 0 {
		return
	}
	cracked := float64(speed * num.Min(gas.Of[Tar], gas.Of[Fuel]))
	soot := float64(0.125 * cracked)
	share := soot / gas.Of[Fuel]
	rate := &r.rate[layer]
	rate.Of[Tar] -= cracked
	rate.Of[Soot] += soot
	m.Books.Out.Of[Tar] += float64(dt * cracked)
	m.Books.In.Of[Soot] += float64(dt * soot)
	for _, i := range [...]int{Fuel, FuelHeat, FuelSoot, FuelCO} {
		rate.Of[i] -= float64(share * gas.Of[i])
		m.Books.Out.Of[i] += float64(dt * share * gas.Of[i])
	}
}
