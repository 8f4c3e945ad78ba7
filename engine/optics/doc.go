// Package optics turns soot, tar and water in the gas into what an eye sees:
// extinction, optical depth, lightness and tint.
//
// The three particles scatter and absorb each in its own way. Their scattering
// and absorption coefficients are added separately at three wavelengths; the
// scattered share (albedo) of the mixture follows from the sums and is never
// averaged. Lightness is that of a cloud too thick to see through, so it says
// how dark the smoke is and not how much of it there is.
//
// Limits: one particle kind each for soot, tar and water; an evenly lit cloud;
// no sky, no backlight, no colour of lamps. Smoke concentration itself is
// uncertain by a factor of about three even in the best fire models, so these
// numbers feed ordinal ratings and a picture, never a reading of a meter.
package optics
