package item

import (
	"lintel/engine"
	"lintel/engine/sim"
	"lintel/quiz"
)

// Truth is what the fire was really doing at an item's moment.
type Truth struct {
	Stage    engine.Stage            `json:"stage"`
	Regime   engine.Regime           `json:"regime"`
	Openings map[string]OpeningTruth `json:"openings"` // those to the open air
	Accept   [][]quiz.Reply          `json:"accept"`   // for each ask, every right reply

	// CutMargin says how far the nearest of the answers stands from another: the
	// share by which the measure behind it could be wrong.
	CutMargin float64 `json:"-"`
	// before says how the smoke looked a while before.
	before string
	// Exact holds the true ratings of every opening to the open air.
	Exact engine.Readings `json:"-"`
}

// truthAt is what a fire does now, with what is accepted of it.
func truthAt(run *sim.Run, accept [][]quiz.Reply, margin float64) *Truth {
	exact := run.Readings()
	return &Truth{
		Stage: run.Stage(), Regime: run.Regime(), Openings: openingTruths(exact),
		Accept: accept, CutMargin: margin, Exact: exact,
	}
}

// OpeningTruth is one opening's role in the flow and its neutral plane, a
// fraction of its height, null where there is none.
type OpeningTruth struct {
	Flow         engine.Flow `json:"flow"`
	NeutralPlane *float64    `json:"neutral_plane"`
}

// openingTruths picks the roles out of the exact readings.
func openingTruths(exact engine.Readings) map[string]OpeningTruth {
	truths := map[string]OpeningTruth{}
	for _, look := range exact.Looks {
		for _, r := range look.Openings {
			truths[r.ID] = OpeningTruth{Flow: r.Flow, NeutralPlane: r.NeutralPlane}
		}
	}
	return truths
}
