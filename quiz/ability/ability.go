// Package ability rates people and items on one scale, in logits, by what came of
// their meetings. It is pure: ratings go in and come out.
//
// The model is Rasch's: a person at θ meets an item of difficulty b and succeeds
// with the chance 1/(1+exp(b-θ)); one who guesses has the blind guess's credit
// besides. The ratings follow the answers as in Elo's system, with steps that
// shrink as answers come in:
//
//	θ += U(n)·(credit - expected)    b -= U(m)·(credit - expected)
//
// Source: R. Pelánek, "Applications of the Elo rating system in adaptive
// educational systems", Computers & Education 98, 2016.
package ability

import "lintel/engine/curve"

// firstStep and shrinking are a and b of the step U(n) = a/(1+b·n), as Pelánek
// found to serve well.
const (
	firstStep = 1.0
	shrinking = 0.05
)

// Rating is where a person or an item stands, and after how many meetings.
type Rating struct {
	Logits float64
	N      int
}

// Step is how far one answer may move a rating after n of them.
func Step(n int) float64 { return firstStep / (1 + float64(shrinking*float64(n))) }

// Expected is the credit that a person gets of an item on average. Guess is the
// credit of a blind guess.
func Expected(person, item, guess float64) float64 {
	return guess + float64((1-guess)*curve.Logistic(person-item))
}

// Meet moves both ratings by what came of one meeting: the credit from 0 to 1.
func Meet(person, item *Rating, credit, guess float64) {
	surprise := credit - Expected(person.Logits, item.Logits, guess)
	person.Logits += float64(Step(person.N) * surprise)
	item.Logits -= float64(Step(item.N) * surprise)
	person.N++
	item.N++
}
