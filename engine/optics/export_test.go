package optics

// Specific is a mixture's extinction and absorption at one wavelength, 1/m.
type Specific struct{ Extinction, Absorption float64 }

// At opens one band of a mixture to the tests.
func At(s Smoke, nanometres string) Specific {
	l := s.at(map[string]band{"450": blue, "550": green, "633": red}[nanometres])
	return Specific{Extinction: l.scattered + l.absorbed, Absorption: l.absorbed}
}
