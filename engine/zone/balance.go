package zone

// Balance finds the pressure in room a at which as much mass leaves through the
// opening as enters, with b as it is, and returns that flow: the state of a room
// with one opening and a steady fire, given its layers. It is pure; a keeps its
// own pressure.
//
// Check: testdata/fire/steckler_1982.csv.
func (s Slot) Balance(a, b Column) VentFlow {
	low, high := -200.0, 200.0
	var f VentFlow
	for range 60 {
		a.Pressure = float64(0.5 * (low + high))
		s.Flow(&a, &b, &f)
		if f.TotalOut() > f.TotalIn() {
			high = a.Pressure
		} else {
			low = a.Pressure
		}
	}
	return f
}

// Still is a column of outside air at a temperature in kelvin.
func Still(temp float64) Column {
	density := Density / temp
	c := Column{
		Interface: 1e9, Density: [2]float64{density, density}, Temp: [2]float64{temp, temp}, Air: density,
	}
	c.prepare()
	return c
}

// Layered is a column of two layers, temperatures in kelvin, heights in m, with
// outside air of the given temperature.
func Layered(floor, interfaceM, lower, upper, outside float64) Column {
	c := Column{
		Floor: floor, Interface: floor + interfaceM,
		Density: [2]float64{Density / lower, Density / upper}, Temp: [2]float64{lower, upper},
		Air: Density / outside,
	}
	c.prepare()
	return c
}
