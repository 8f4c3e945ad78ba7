// Package bench measures the figures that Lintel promises, each beside its
// control in the same run. A figure that this run did not measure prints null,
// never a pass.
package bench

import (
	"context"
	"encoding/json"
	"fmt"
	"io"
	"maps"
	"slices"
	"strconv"
	"strings"

	"lintel/engine"
)

// Figure is one promise: its name, unit and goal, and how to measure it.
// Measure is nil where this program cannot measure it; Needs then says what can.
type Figure struct {
	Name    string
	Unit    string
	Goal    string
	Slow    bool // left out of the quick set
	Needs   string
	Measure func(ctx context.Context) (Result, error)
	Long    *Long // nil where there is no long form
}

// Result is one measurement. Ours and Control are a number, or named numbers
// where the goal has several parts.
type Result struct {
	Ours    any
	Control any
	Holds   bool
	How     string
}

// line is the shape of `bench -json`, one line a figure.
type line struct {
	Figure  string `json:"figure"`
	Ours    any    `json:"ours"`
	Control any    `json:"control"`
	Unit    string `json:"unit"`
	Goal    string `json:"goal"`
	Holds   *bool  `json:"holds"`
	How     string `json:"how"`
}

// Options choose the figures and the form of the output.
type Options struct {
	All  bool
	Only string
	JSON bool
}

// Run measures the chosen figures and writes one line for each. It returns an
// error when Only names no figure or the output cannot be written; a figure
// that could not be measured is a line with null, not an error.
func Run(ctx context.Context, figures []Figure, o Options, out io.Writer) error {
	chosen := choose(figures, o)
	if len(chosen) == 0 {
		return engine.Bad("-only", strconv.Quote(o.Only)+" names no figure", "use one of "+strings.Join(names(figures), ", "))
	}
	for _, f := range chosen {
		if err := write(out, measure(ctx, f, o), o.JSON); err != nil {
			return err
		}
	}
	return nil
}

func names(figures []Figure) []string {
	list := make([]string, len(figures))
	for i, f := range figures {
		list[i] = f.Name
	}
	return list
}

func choose(figures []Figure, o Options) []Figure {
	if o.Only == "" {
		return figures
	}
	return slices.DeleteFunc(slices.Clone(figures), func(f Figure) bool { return f.Name != o.Only })
}

func measure(ctx context.Context, f Figure, o Options) line {
	l := line{Figure: f.Name, Unit: f.Unit, Goal: f.Goal}
	switch {
	case f.Measure == nil:
		l.How = "not measured: " + f.Needs
	case f.Slow && !o.All && o.Only == "":
		l.How = "not measured: left out of the quick set, use -all or -only " + f.Name
	default:
		r, err := f.Measure(ctx)
		if err != nil {
			l.How = "not measured: " + err.Error()
			break
		}
		l.Ours, l.Control, l.Holds, l.How = r.Ours, r.Control, &r.Holds, r.How
	}
	if f.Long != nil {
		l.How += f.Long.told(f.Name)
	}
	return l
}

func write(out io.Writer, l line, asJSON bool) error {
	if asJSON {
		return json.NewEncoder(out).Encode(l)
	}
	verdict := "not measured"
	if l.Holds != nil {
		verdict = map[bool]string{true: "holds", false: "FALLS SHORT"}[*l.Holds]
	}
	_, err := fmt.Fprintf(out, "%-16s %-12s ours %s  control %s  unit %s  goal %s\n                 %s\n",
		l.Figure, verdict, number(l.Ours), number(l.Control), l.Unit, l.Goal, strings.ReplaceAll(l.How, "\n", "\n                 "))
	return err
}

// number spells a measurement for a person: four digits are more than any of
// them deserves. -json gives all.
func number(v any) string {
	switch x := v.(type) {
	case nil:
		return "-"
	case float64:
		return strconv.FormatFloat(x, 'g', 4, 64)
	case map[string]float64:
		parts := make([]string, 0, len(x))
		for _, name := range slices.Sorted(maps.Keys(x)) {
			parts = append(parts, name+" "+number(x[name]))
		}
		return strings.Join(parts, ", ")
	}
	return fmt.Sprint(v)
}
