// Package sim runs a scenario: it steps the fire of engine/zone, applies the
// moves, follows the truth of its stage, notes sudden events, and shows each
// opening as engine/optics and engine/cue see it.
//
// A run is deterministic: the same scenario, library and calls give the same
// bits on every machine. Advance moves in whole steps of zone.StepS and allocates
// nothing but for an event.
package sim
