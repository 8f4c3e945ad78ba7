package optics

import (
	"math"

	"lintel/engine/internal/num"
)

// Smoke is what floats in the gas, in kg/m³.
type Smoke struct {
	Soot  float64
	Tar   float64
	Water float64
}

// Look is how smoke appears.
type Look struct {
	ExtinctionM float64 // 1/m at 633 nm
	Albedo      float64 // share of green light that is scattered, 0 to 1
	Lightness   float64 // 0 black to 1 white; 1 where there is no smoke
	Tint        float64 // 0 neutral to 1 brown
	Steam       float64 // share of the extinction that is water
}

// light is the optics of the mixture at one band, 1/m.
type light struct {
	scattered float64
	absorbed  float64
	forward   float64 // scattered, weighted by the forward cosine
}

func (l *light) add(p *particle, b band, mass float64) {
	extinction := float64(mass * p.extinction[b])
	scattered := float64(extinction * p.albedo[b])
	l.scattered += scattered
	l.absorbed += extinction - scattered
	l.forward += float64(scattered * p.forward)
}

// at mixes the three particles at one band.
func (s Smoke) at(b band) light {
	var l light
	l.add(&soot, b, s.Soot)
	l.add(&tar, b, s.Tar)
	l.add(&water, b, s.Water)
	return l
}

// See gives the look of the smoke.
func (s Smoke) See() Look {
	atRed := s.at(red)
	extinction := atRed.scattered + atRed.absorbed
	if extinction <= 0 {
		return Look{Lightness: 1, Albedo: 1}
	}
	atGreen := s.at(green)
	return Look{
		ExtinctionM: extinction,
		Albedo:      atGreen.scattered / (atGreen.scattered + atGreen.absorbed),
		Lightness:   Lightness(atGreen.reflectance()),
		Tint:        s.tint(),
		Steam:       float64(s.Water*water.extinction[red]) / extinction,
	}
}

// tint is the share of the absorbed blue light that tar absorbs: 1 for tar by
// itself, near 0 where soot does the absorbing. Brown carbon absorbs most at
// short wavelengths (Eos, 2013, and Pokhrel et al., Atmospheric Chemistry and
// Physics 16 (2016) 9549; both seen in secondary notes). The form is ours.
func (s Smoke) tint() float64 {
	absorbed := s.at(blue).absorbed
	if absorbed <= 0 {
		return 0
	}
	return float64(float64(s.Tar*tar.extinction[blue])*(1-tar.albedo[blue])) / absorbed
}

// reflectance of a cloud too thick to see through, 0 to 1.
func (l *light) reflectance() float64 {
	all := l.scattered + l.absorbed
	if all <= 0 || l.scattered <= 0 {
		return 0
	}
	return Reflectance(l.scattered/all, l.forward/l.scattered)
}

// Reflectance of an evenly lit cloud too thick to see through, from its albedo ω
// and mean cosine of scattering g, 0 to 1.
//
//	s = √((1 − ω)/(1 − g·ω)),  R = (1 − s)/(1 + s)
//
// The two-stream result with similarity parameter s (after van de Hulst; from
// memory, to be confirmed).
func Reflectance(albedo, forward float64) float64 {
	s := math.Sqrt((1 - albedo) / (1 - float64(forward*albedo)))
	return (1 - s) / (1 + s)
}

// Lightness is how light a reflectance looks, 0 black to 1 white: CIE 1976 L*
// over 100.
//
//	L* = 116·Y^⅓ − 16 above Y = 0.008856, 903.3·Y below
//
// Source: CIE 15, Colorimetry (from memory, to be confirmed).
func Lightness(reflectance float64) float64 {
	if reflectance <= 0.008856 {
		return float64(9.033 * math.Max(0, reflectance))
	}
	return float64(1.16*num.Cbrt(reflectance)) - 0.16
}
