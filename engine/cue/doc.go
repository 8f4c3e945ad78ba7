// Package cue turns the physics at one opening into what a person would say of
// it: volume, velocity, density and darkness on ordinal scales, and the named
// cues beside them (flow, colour, churning, pulsing, flame, neutral plane).
//
// Every ordinal cue rests on a measure of its own, made dimensionless so that a
// small box and a house that look alike are rated alike:
//
//	volume    K·V / (√g · A^¾)   visible smoke flux over the size of the opening
//	velocity  v / √(g·H)         mean speed of the outflow over its height
//	density   τ = K·L            optical depth seen through the outflow
//	darkness  1 − lightness      how dark the smoke itself is
//
// The cut points come in as Scales, which content/scales holds with their
// derivations. They are ours: no published ordinal scale of smoke was found.
// Smoke concentration is uncertain by a factor of about three even in the best
// fire models, so a level is all that is ever claimed.
package cue
