package command

import (
	"bufio"
	"fmt"
	"math"
	"slices"
	"sort"
	"strings"

	"lintel/engine"
)

// writeFinding prints a finding for a person: conditions, their reasons and the
// next look, never an order.
func writeFinding(w *bufio.Writer, f engine.Finding) {
	caution(w)
	writeStages(w, f)
	writeOpenings(w, f)
	writeHazards(w, f.Hazards)
	writeEvidence(w, "Because", f.Because)
	writeEvidence(w, "Against", f.Against)
	if look := f.NextLook; look != nil {
		fmt.Fprintf(w, "\nNext look: %s at %s (expected to settle %.2f bits)\n", plain(string(look.Cue)), look.Opening, look.GainBits)
	}
	if len(f.Cautions) > 0 {
		fmt.Fprintln(w, "\nKeep in mind")
		for _, c := range f.Cautions {
			fmt.Fprintf(w, "  %s\n", c)
		}
	}
}

func writeStages(w *bufio.Writer, f engine.Finding) {
	fmt.Fprintf(w, "Consistent with: %s (share of simulated fires that looked like this)\n", strings.Join(spelled(f.Set), " or "))
	stages := slices.Clone(engine.Stages)
	sort.SliceStable(stages, func(i, j int) bool { return f.Stage[stages[i]] > f.Stage[stages[j]] })
	for _, stage := range stages {
		fmt.Fprintf(w, "  %3.0f %%  %s\n", 100*f.Stage[stage], plain(string(stage)))
	}
	fmt.Fprintf(w, "Size set by: fuel %.0f %%, air %.0f %%\n", 100*f.Regime[engine.FuelLimited], 100*f.Regime[engine.VentilationLimited])
	if f.Trend != "" {
		fmt.Fprintf(w, "Between the last two looks: %s\n", f.Trend)
	}
}

func writeOpenings(w *bufio.Writer, f engine.Finding) {
	ids := make([]string, 0, len(f.Openings))
	for id := range f.Openings {
		ids = append(ids, id)
	}
	sort.Strings(ids)
	fmt.Fprintln(w, "\nOpenings")
	for _, id := range ids {
		o := f.Openings[id]
		fmt.Fprintf(w, "  %s: %s, nearness %.2f", id, o.Role, o.Nearness)
		if o.NeutralPlane != nil {
			fmt.Fprintf(w, ", neutral plane at %.2f of the height", *o.NeutralPlane)
			if o.Estimated {
				fmt.Fprint(w, " (worked out)")
			}
		}
		fmt.Fprintln(w)
	}
	if len(f.Path) > 0 {
		fmt.Fprintf(w, "Flow path: %s\n", strings.Join(f.Path, " > "))
	}
	if f.PathNote != "" {
		fmt.Fprintln(w, f.PathNote)
	}
}

// writeHazards never calls a hazard low: where nothing speaks for one, the
// finding itself says that no sign of it was seen from here.
func writeHazards(w *bufio.Writer, hazards []engine.HazardFinding) {
	fmt.Fprintln(w, "\nRapid events")
	for _, h := range hazards {
		mark := " "
		if h.Flagged {
			mark = "!"
		}
		fmt.Fprintf(w, "%s %s (%.0f %%): %s\n", mark, plain(string(h.Event)), 100*h.Probability, strings.Join(h.Conditions, "; "))
	}
}

// leastShown is the weight below which a reason rounds to nothing in the text;
// -json has it all the same.
const leastShown = 0.05

func writeEvidence(w *bufio.Writer, title string, list []engine.Evidence) {
	head := "\n" + title + "\n"
	for _, e := range list {
		if math.Abs(e.Weight) >= leastShown {
			fmt.Fprintf(w, "%s  %+.1f  %s [%s; %s]\n", head, e.Weight, e.Text, e.Rule, e.Source)
			head = ""
		}
	}
}

func spelled[T ~string](list []T) []string {
	words := make([]string, len(list))
	for i, word := range list {
		words[i] = plain(string(word))
	}
	return words
}
