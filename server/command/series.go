package command

import (
	"bufio"
	"fmt"
	"strings"

	"lintel/content/wording"
	"lintel/engine"
)

// rowsForAPerson is how many moments the text shows; -json and -csv have all.
const rowsForAPerson = 12

// writeSeries prints a run for a person: the fire, each room, what shows at the
// openings at the end, and the sudden events.
func writeSeries(w *bufio.Writer, scenario engine.Scenario, s engine.Series) error {
	caution(w)
	if scenario.Name != "" {
		fmt.Fprintln(w, scenario.Name)
		fmt.Fprintln(w)
	}
	moments := spread(len(s.TS), rowsForAPerson)
	fmt.Fprintf(w, "%8s %9s  %s\n", "time s", "fire kW", "stage")
	for _, k := range moments {
		fmt.Fprintf(w, "%8.0f %9.1f  %s\n", s.TS[k], s.HRRKW[k], plain(string(s.Stage[k])))
	}
	for _, room := range scenario.Compartments {
		writeRoom(w, room, s.TS, s.Compartments[room.ID], moments)
	}
	writeShows(w, scenario, s)
	writeEvents(w, s.Events)
	return nil
}

func writeRoom(w *bufio.Writer, room engine.Compartment, times []float64, c engine.CompartmentSeries, moments []int) {
	fmt.Fprintf(w, "\n%s\n%8s %8s %8s %8s %8s %8s\n", room.ID, "time s", "upper °C", "lower °C", "layer m", "oxygen %", "Pa")
	for _, k := range moments {
		layer := "-"
		if c.InterfaceM[k] != nil {
			layer = fmt.Sprintf("%.2f", *c.InterfaceM[k])
		}
		fmt.Fprintf(w, "%8.0f %8.0f %8.0f %8s %8.1f %8.1f\n", times[k], c.UpperC[k], c.LowerC[k], layer, 100*c.O2Upper[k], c.PressurePa[k])
	}
}

func writeShows(w *bufio.Writer, scenario engine.Scenario, s engine.Series) {
	fmt.Fprintf(w, "\nWhat shows outside at the end (levels 0 to %d)\n", engine.TopLevel)
	for _, o := range scenario.Openings {
		cues := s.Openings[o.ID].Cues
		if o.To == engine.Outside && len(cues) > 0 {
			fmt.Fprintf(w, "  %s\n", describe(cues[len(cues)-1]))
		}
	}
}

// describe puts the ratings of one opening into a line.
func describe(r engine.Reading) string {
	parts := []string{r.ID + ": flow " + orUnseen(string(r.Flow))}
	for _, cue := range engine.OrdinalCues {
		if n := r.Level(cue); n != nil {
			parts = append(parts, fmt.Sprintf("%s %d", cue, *n))
		}
	}
	if r.Colour != "" {
		parts = append(parts, plain(string(r.Colour)))
	}
	if r.Flame != "" && r.Flame != engine.FlameNone {
		parts = append(parts, "flame "+string(r.Flame))
	}
	if r.NeutralPlane != nil {
		parts = append(parts, fmt.Sprintf("neutral plane at %.2f of the height", *r.NeutralPlane))
	}
	return strings.Join(parts, ", ")
}

func writeEvents(w *bufio.Writer, events []engine.Event) {
	if len(events) == 0 {
		return
	}
	fmt.Fprintln(w, "\nEvents")
	for _, e := range events {
		fmt.Fprintf(w, "%8.0f s  %s in %s: %s\n", e.TS, wording.Say("event/"+e.Kind), e.Where, e.Cause)
	}
}

// spread picks up to n places evenly from a list, the first and last included.
func spread(length, n int) []int {
	if length <= n {
		n = length
	}
	places := make([]int, n)
	for i := range places {
		if n > 1 {
			places[i] = i * (length - 1) / (n - 1)
		}
	}
	return places
}

func orUnseen(word string) string {
	if word == "" {
		return "not seen"
	}
	return plain(word)
}
