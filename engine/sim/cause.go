package sim

import (
	"strconv"

	"lintel/engine"
	"lintel/engine/zone"
)

// Causes are the ids of every sentence that an event's cause is told with, as keys
// by engine.Sentence: content has the words, in each language, and whoever says them
// turns the units of their numbers.
var Causes = []string{
	causeOpened, causeShort, causeLayer, causeGas, causeGasBurning, causeAir, causeMixed, causeCaught,
	causeGrew, causeLayerLit, causeWater, causeLower, causeUpper, causeBurner, causeSpent, causeGlass, causeThrough,
}

const (
	causeOpened     = "cause/opened"              // s, opening
	causeShort      = "cause/was_short_of_air"    //
	causeLayer      = "cause/hot_layer"           // t, flux
	causeGas        = "cause/starved_gas"         // t, heat, oxygen
	causeGasBurning = "cause/starved_gas/burning" // t, heat, oxygen, kw
	causeAir        = "cause/air_reached_gas"     // kw
	causeMixed      = "cause/mixed_gas"           // t, heat, oxygen
	causeCaught     = "cause/mixture_caught"      // kw
	causeGrew       = "cause/grew"                // from, to
	causeLayerLit   = "cause/layer_lit"           // t, kw
	causeWater      = "cause/water"               // water
	causeLower      = "cause/oxygen/lower"        // oxygen
	causeUpper      = "cause/oxygen/upper"        // oxygen
	causeBurner     = "cause/burner_off"          //
	causeSpent      = "cause/fuel_spent"          //
	causeGlass      = "cause/glass_fell"          // t, opening
	causeThrough    = "cause/burned_through"      // t, opening
)

// Slots of the sentences. Temperatures, litres and numbers with a fraction are words
// of their own (engine.Word), as each page writes them in its own way.

func degrees(name string, c float64) string {
	return engine.Slot(name, engine.Word("degrees/"+whole(c)))
}
func fraction(name string, x float64) string {
	return engine.Slot(name, engine.Word("number/"+tenth(x)))
}
func kilowatts(watts float64) string { return engine.Slot("kw", whole(watts/1000)) }
func litres(x float64) string        { return engine.Slot("water", engine.Word("litres/"+tenth(x))) }

func (r *Run) opening(i int) string {
	return engine.Slot("opening", engine.Word("opening/"+r.scenario.Openings[i].ID))
}

// gas is the upper gas of a room as a cause tells it: its temperature, what it would
// release, and its oxygen.
func gas(room *zone.Room, heat float64) []string {
	upper := &room.Gas[zone.Upper]
	return []string{degrees("t", upper.Temp()-zone.Kelvin), fraction("heat", heat/1e6), fraction("oxygen", 100*upper.OxygenMoles())}
}

func whole(x float64) string { return strconv.FormatFloat(x, 'f', 0, 64) }
func tenth(x float64) string { return strconv.FormatFloat(x, 'f', 1, 64) }
