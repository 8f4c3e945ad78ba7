package validate

import "lintel/engine"

// These spell the scenarios of the series. Every length is one that was
// published with the experiment; where it was not, the series says so.

func some(x float64) *float64 { return &x }

func roomOf(id string, width, depth, height float64, lining string, thickness float64) engine.Compartment {
	return engine.Compartment{ID: id, WidthM: width, DepthM: depth, HeightM: height, Lining: lining, LiningM: some(thickness)}
}

// slot is a vertical opening; it begins open or shut.
func slot(id, from, to string, sill, width, height float64, open float64) engine.Opening {
	kind := engine.Door
	if sill > 0 {
		kind = engine.Window
	}
	return engine.Opening{ID: id, From: from, To: to, Kind: kind, SillM: sill, WidthM: width, HeightM: height, Open: some(open)}
}

// hole is a square or round hole in the ceiling of a room.
func hole(id, from, to string, area float64, shape string, open float64) engine.Opening {
	return engine.Opening{ID: id, From: from, To: to, Kind: engine.CeilingHatch, AreaM2: area, Shape: shape, Open: some(open)}
}

// burner is a gas burner that reaches its power in five seconds.
func burner(room string, kW, base, width float64, place engine.Place) engine.Fuel {
	return engine.Fuel{
		ID: "burner", In: room, Kind: engine.GasBurner, Place: place,
		HRRKW: [][2]float64{{0, 0}, {5, kW}}, BaseM: some(base), DiameterM: some(width),
	}
}

// until adds when a burner is shut.
func shutAt(f engine.Fuel, at float64) engine.Fuel {
	kW := f.HRRKW[len(f.HRRKW)-1][1]
	f.HRRKW = append(f.HRRKW, [2]float64{at, kW}, [2]float64{at + 5, 0})
	return f
}

// opens is the move that opens an opening at a time.
func opens(opening string, at float64) engine.Move {
	return engine.Move{TS: at, Opening: opening, Open: some(1)}
}

// square is the diameter of the circle as large as a square burner.
func square(side float64) float64 { return 1.128379 * side }
