// Package content is Lintel's knowledge as data: fuels, linings, scales, rules,
// sources and scene families. People write it as YAML in the folders beside this
// file; `go generate ./content` checks it and writes it as the Go literals of the
// *_gen.go files and as JSON for the front end, so that no YAML reader travels to
// the phone. A test fails when the generated files are stale.
package content

//go:generate go run ./internal/compile
//go:generate go run ./internal/spanish

import (
	"sync"

	"lintel/engine"
	"lintel/engine/infer"
	"lintel/quiz/item"
)

// Materials returns the fuels and linings that a fire may use.
func Materials() engine.Materials { return engine.Materials{Fuels: fuels, Linings: linings} }

// Families lists the recipes of scenes.
func Families() []item.Family { return families }

// RuleList lists the rules as the reader takes them, without what only people read:
// of texts they have the keys.
func RuleList() []infer.Rule { return rules }

// Rules returns the rules made ready to read smoke with. Generated content has
// been through this very step, so a failure is a programmer's error.
var Rules = sync.OnceValue(func() *infer.Set {
	set, err := infer.NewSet(rules, weights, priors)
	if err != nil {
		panic("content: " + err.Error())
	}
	return set
})
