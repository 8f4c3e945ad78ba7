// Package item makes practice items. A family is a recipe of scenes that share
// one lesson: a building with its fire, the ranges within which a scene may
// vary, the moment at which it is looked at and what is asked. A family and a
// seed together give one item and its truth, always the same ones.
//
// The truth is measured on the simulated fire: the stage from its state and
// history, the ratings from the physics at each opening, a change from the same
// fire run on. A scene is thrown away when anything asked of it lies too near a
// cut point to be fair, or when it does not show what its family is about; the
// next scene of the same seed is then tried. Nothing here depends on time, on
// the machine or on what was asked before.
package item
