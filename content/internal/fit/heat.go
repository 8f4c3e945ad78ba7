package main

import (
	"slices"

	"lintel/engine"
	"lintel/engine/infer"
)

// What the trade says outright is kept out of the reach of the fit. The NFCC's
// indicator table (Understand signs and symptoms of flashover) counts faster and
// darker smoke toward flashover; simulated fires that have just passed their peak
// push as hard as those before it, and would teach the reverse.

// heat are the conditions that ask for a strong sign of heat.
var heat = []string{
	"velocity >= 3", "velocity >= 4", "most velocity >= 3", "most velocity >= 4", "volume >= 4", "churning",
	"flame is tongues", "flame is full", "flame is tongues or full", "velocity change >= 1", "overall velocity change >= 1",
}

// fierce are those by which no rapid event gets less likely. Flame that fills an
// opening is not among them: it shows a flashover that is past.
var fierce = append(slices.DeleteFunc(slices.Clone(heat), func(line string) bool { return line == "flame is full" }), "darkness >= 3")

// asksFor reports whether a rule asks for one of these conditions.
func asksFor(r *infer.Rule, lines []string) bool {
	return slices.ContainsFunc(r.When, func(line string) bool { return slices.Contains(lines, line) })
}

// order says that a rule's weight for one class never passes that for another.
type order struct{ rule, low, high int }

// heatOrder bounds the rules that ask for a strong sign of heat: none may speak
// more for a fire dying down than for one before flashover.
func heatOrder(rules []infer.Rule) []order {
	low, high := indexOf(trueStages, engine.Decay), indexOf(trueStages, engine.PreFlashover)
	var list []order
	for i := range rules {
		if asksFor(&rules[i], heat) {
			list = append(list, order{i, low, high})
		}
	}
	return list
}
