package lint

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/content/fieldbook"
	"lintel/engine"
	"lintel/engine/infer"
)

// Each planted fault must be found, and only in what was planted.
func TestPlantedFaultsAreFound(t *testing.T) {
	cases := []struct {
		name  string
		plant func(b *book)
		want  string
	}{
		{"id given twice", func(b *book) { b.rules[1].ID = b.rules[0].ID }, "given twice"},
		{"no source", func(b *book) { b.rules[0].Sources = nil }, "names no source"},
		{"unknown source", func(b *book) { b.rules[0].Sources = []string{"hearsay"} }, "hearsay"},
		{"no counter-sign", func(b *book) { b.rules[0].CounterSign = " " }, "no counter-sign"},
		{"no look-alike", func(b *book) { b.rules[0].LookAlike = "" }, "no look-alike"},
		{"no next look", func(b *book) { b.rules[0].NextLook = "" }, "no next look"},
		{"same logic in another order", sameLogic, "same logic"},
		{"a case that must fire", func(b *book) { b.cases[0].Fires = !b.cases[0].Fires }, "in a case in which it must"},
		{"no case", func(b *book) { b.cases = b.cases[2:] }, "fires in no case"},
		{"says nothing", func(b *book) {
			r := &b.rules[0]
			r.Supports, r.Opposes, r.Hazards, r.Alike, r.Regime, r.Nearness, r.Caution = nil, nil, nil, nil, "", 0, ""
		}, "says nothing"},
		{"an impossible stage", func(b *book) { b.rules[0].Supports = []engine.Stage{engine.Undetermined} }, "truly be in"},
		{"a hazard without a condition", func(b *book) {
			b.rules[0].Hazards, b.rules[0].Condition = []engine.Hazard{engine.Flashover}, ""
		}, "without wording the condition"},
		{"an order to enter", text("Enter by the far side."), "gives an order"},
		{"an order to stay out", text("Crews should stay out until it clears."), "gives an order"},
		{"an order to vent", text("Smoke is heavy. Vent the roof early."), "gives an order"},
		{"an order to keep closed", text("It helps to keep the door closed."), "gives an order"},
		{"an order not to", text("It is hot; do not open anything."), "gives an order"},
		{"seconds in figures", text("It flashes over within 90 s of opening."), "number of seconds"},
		{"seconds in words", text("Flashover follows ten seconds later."), "number of seconds"},
		{"minutes", text("About 3 minutes are left."), "number of seconds"},
		{"called safe", text("With pale smoke the room is safe."), "safe or certain"},
		{"a certain event", text("The room will flash over."), "safe or certain"},
		{"an order in a lesson", func(b *book) {
			b.lessons = append(b.lessons, fieldbook.Lesson{ID: "x", Sources: []string{"common_practice"}, Body: []string{"Open the door."}})
		}, "lesson x gives an order"},
		{"a lesson's unknown term", func(b *book) {
			b.lessons = append(b.lessons, fieldbook.Lesson{ID: "x", Sources: []string{"common_practice"}, Terms: []string{"nowhere"}})
		}, "unknown glossary term nowhere"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			b := copyOf(shipped())
			c.plant(b)
			var lines []string
			for _, problem := range b.check() {
				lines = append(lines, problem.Error())
			}
			require.NotEmpty(t, lines)
			assert.Contains(t, strings.Join(lines, "\n"), c.want)
		})
	}
}

func text(line string) func(b *book) {
	return func(b *book) { b.rules[0].Text = line }
}

func sameLogic(b *book) {
	b.rules[1].At, b.rules[1].Unless = b.rules[0].At, b.rules[0].Unless
	b.rules[1].When = nil
	for i := len(b.rules[0].When) - 1; i >= 0; i-- {
		b.rules[1].When = append(b.rules[1].When, b.rules[0].When[i])
	}
}

// copyOf lets a test change a book without changing what ships.
func copyOf(b *book) *book {
	c := *b
	c.rules = append([]infer.Rule(nil), b.rules...)
	c.cases = append([]infer.Case(nil), b.cases...)
	c.lessons = append([]fieldbook.Lesson(nil), b.lessons...)
	return &c
}
