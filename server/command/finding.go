package command

import (
	"bufio"
	"fmt"
	"math"
	"sort"
	"strings"

	"lintel/engine"
)

// writeFinding prints a finding for a person: conditions, their reasons and the
// next look, never an order.
func writeFinding(w *bufio.Writer, f engine.Finding) {
	caution(w)
	writeStages(w, f)
	writeRegime(w, f)
	writeOpenings(w, f)
	writeHazards(w, f.Hazards)
	writeEvidence(w, "Because", f.Because)
	writeEvidence(w, "Against", f.Against)
	if look := f.NextLook; look != nil {
		fmt.Fprintf(w, "\nThe look that would change this most: %s at %s (expected to tell %s)\n", plain(string(look.Cue)), look.Opening, gain(look.GainBits))
	}
	if len(f.Cautions) > 0 {
		fmt.Fprintln(w, "\nKeep in mind")
		for _, c := range f.Cautions {
			fmt.Fprintf(w, "  %s\n", c)
		}
	}
}

func gain(bits float64) string {
	if bits < 0.01 {
		return "under 0.01 bits"
	}
	return fmt.Sprintf("%.2f bits", bits)
}

// tooLittle is the undetermined share above which nothing is named. Chosen by us.
const tooLittle = 0.5

// named is how many stages a headline names before it says that the rest are not
// told apart. Chosen by us.
const named = 2

func writeStages(w *bufio.Writer, f engine.Finding) {
	if f.Stage[engine.Undetermined] > tooLittle {
		fmt.Fprintln(w, "Too little seen to name a stage.")
		return
	}
	set := spelled(byShare(f.Set, f.Stage))
	first := min(named, len(set))
	fmt.Fprintf(w, "Consistent with: %s", strings.Join(set[:first], " or "))
	if rest := set[first:]; len(rest) > 0 {
		fmt.Fprintf(w, "; not told apart from here: %s", strings.Join(rest, ", "))
	}
	fmt.Fprintln(w, "\nStage (weight of the signs seen, fitted to simulated fires)")
	for _, stage := range byShare(engine.Stages, f.Stage) {
		fmt.Fprintf(w, "  %9s  %s\n", percent(f.Stage[stage]), plain(string(stage)))
	}
}

// percent never prints a nought: no look rules anything out.
func percent(share float64) string {
	if share < 0.005 {
		return "under 1 %"
	}
	return fmt.Sprintf("%.0f %%", 100*share)
}

func writeRegime(w *bufio.Writer, f engine.Finding) {
	air, fuel := f.Regime[engine.VentilationLimited], f.Regime[engine.FuelLimited]
	told := "not told"
	switch {
	case math.Abs(air-fuel) < 0.01:
	case air > fuel:
		told = fmt.Sprintf("limited by air %s, limited by fuel %s", percent(air), percent(fuel))
	default:
		told = fmt.Sprintf("limited by fuel %s, limited by air %s", percent(fuel), percent(air))
	}
	fmt.Fprintf(w, "What limits the fire, a question of its own: %s\n", told)
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
		fmt.Fprintf(w, "  %s: %s", id, flows[o.Role])
		if plane := o.NeutralPlane; plane != nil && *plane > 0 && *plane < 1 {
			fmt.Fprintf(w, "; neutral plane at %s of the opening's height", percent(*plane))
			if o.Estimated {
				fmt.Fprint(w, " (worked out, not seen)")
			}
		}
		fmt.Fprintln(w)
	}
	fmt.Fprintf(w, "Nearest to the seat: %s\n", nearest(ids, f.Openings))
	if len(f.Path) > 0 {
		fmt.Fprintf(w, "Flow path: %s\n", spelledPath(f.Path))
	}
	if f.PathNote != "" {
		fmt.Fprintf(w, "  %s\n", f.PathNote)
	}
}

// toldApart is how far the nearest opening must stand above the next to be named.
// Chosen by us.
const toldApart = 0.1

// nearest names the opening that the signs put nearest the seat, where they tell.
func nearest(ids []string, openings map[string]engine.OpeningFinding) string {
	if len(ids) < 2 {
		return "not told: one opening has nothing to be compared with"
	}
	order := append([]string(nil), ids...)
	sort.SliceStable(order, func(i, j int) bool { return openings[order[i]].Nearness > openings[order[j]].Nearness })
	first, second := openings[order[0]].Nearness, openings[order[1]].Nearness
	if first-second < toldApart {
		return "not told"
	}
	return fmt.Sprintf("%s (%s)", order[0], percent(first))
}

// writeHazards never calls a hazard low: a number stands only beside one that is
// flagged, and where nothing speaks for one, the finding itself says what was
// looked for.
func writeHazards(w *bufio.Writer, hazards []engine.HazardFinding) {
	fmt.Fprintln(w, "\nRapid events (! where the signs pass a mark set on simulated fires)")
	for _, h := range hazards {
		name := plain(string(h.Event))
		if h.Flagged {
			fmt.Fprintf(w, "! %s (%s):\n", name, percent(h.Probability))
		} else {
			fmt.Fprintf(w, "  %s:\n", name)
		}
		for _, condition := range h.Conditions {
			fmt.Fprintf(w, "      %s\n", condition)
		}
	}
}

// leastShown is the weight below which a reason rounds to nothing in the text;
// -json has it all the same.
const leastShown = 0.05

func writeEvidence(w *bufio.Writer, title string, list []engine.Evidence) {
	head := "\n" + title + " (weights are log-odds)\n"
	for _, e := range list {
		if math.Abs(e.Weight) < leastShown {
			continue
		}
		side := "for"
		if e.Weight < 0 {
			side = "against"
		}
		fmt.Fprintf(w, "%s  %+.1f %s %s: %s [%s; %s]\n", head, e.Weight, side, plain(e.For), e.Text, e.Rule, e.Source)
		head = ""
	}
}
