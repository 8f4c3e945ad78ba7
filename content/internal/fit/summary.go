package main

import (
	"fmt"

	"lintel/content"
	"lintel/content/internal/measured"
	"lintel/engine"
	"lintel/engine/infer"
)

// summary prints what the measured reader gets right on the fires that test it, and
// what its sets would be at another covering probability.
func summary(out measured.File, shorter float64, d data) error {
	set, err := infer.NewSet(content.RuleList(), out.Weights(), out.Priors.Reader())
	if err != nil {
		return err
	}
	out.Priors.Cover = shorter
	short, err := infer.NewSet(content.RuleList(), out.Weights(), out.Priors.Reader())
	if err != nil {
		return err
	}
	counts := map[engine.Stage]int{}
	for i := range d.moments {
		counts[d.moments[i].Stage]++
	}
	fmt.Println("moments by stage:", counts)
	control := newRival(d.fit)
	for _, exact := range []bool{true, false} {
		var t, brief, rival tally
		for i := range d.test.examples {
			e := &d.test.examples[i]
			if e.exact == exact {
				m := &d.moments[e.moment]
				t.add(infer.Read(set, e.readings), m)
				brief.add(infer.Read(short, e.readings), m)
				rival.called(control.call(e.readings), m.Stage)
			}
		}
		t.print(exact)
		fmt.Printf("  covering %.2f: set holds %.3f at mean size %.2f\n", shorter, float64(brief.held)/float64(brief.n), float64(brief.size)/float64(brief.n))
		fmt.Printf("  control, a free multinomial logistic reader: top stage right %.3f, mean over the stages %.3f\n", float64(rival.top)/float64(rival.n), rival.even())
	}
	return nil
}

// tally counts right answers.
type tally struct {
	calls                      map[[2]engine.Stage]int // by truth and call
	n, top, held, size, regime int
	flagged, clear             [4][2]int // of those with the hazard, of those without: flagged, all
	with, without              [4][2]int // the same where the hazard is a question
	near, nearOf               int
}

func (t *tally) add(f engine.Finding, m *moment) {
	best := engine.Undetermined
	for _, stage := range engine.Stages {
		if f.Stage[stage] > f.Stage[best] {
			best = stage
		}
	}
	t.called(best, m.Stage)
	if indexOf(f.Set, m.Stage) >= 0 {
		t.held++
	}
	t.size += len(f.Set)
	if (f.Regime[engine.VentilationLimited] > 0.5) == (m.Regime == engine.VentilationLimited) {
		t.regime++
	}
	for h := range f.Hazards {
		side, asked := &t.clear[h], &t.without[h]
		if m.near(h) {
			side, asked = &t.flagged[h], &t.with[h]
		}
		count := 0
		if f.Hazards[h].Flagged {
			count = 1
		}
		side[0], side[1] = side[0]+count, side[1]+1
		if m.asks(h) {
			asked[0], asked[1] = asked[0]+count, asked[1]+1
		}
	}
	t.nearest(f, m)
}

// called counts the stage that was called.
func (t *tally) called(call, truth engine.Stage) {
	t.n++
	if call == truth {
		t.top++
	}
	if t.calls == nil {
		t.calls = map[[2]engine.Stage]int{}
	}
	t.calls[[2]engine.Stage{truth, call}]++
}

// even is the share right of each stage, averaged: every stage counts alike,
// however many moments the drawn fires hold of it.
func (t *tally) even() float64 {
	sum := 0.0
	for _, truth := range trueStages {
		n := 0
		for _, call := range engine.Stages {
			n += t.calls[[2]engine.Stage{truth, call}]
		}
		sum += ratio(t.calls[[2]engine.Stage{truth, truth}], n)
	}
	return sum / float64(len(trueStages))
}

// nearest counts, where more than one room shows, whether the opening with the
// highest nearness leads into the room that burns.
func (t *tally) nearest(f engine.Finding, m *moment) {
	rooms, best, most := map[string]bool{}, "", 0.0
	for _, o := range m.Plan.Openings {
		finding, seen := f.Openings[o.ID]
		if !seen {
			continue
		}
		rooms[o.From] = true
		if finding.Nearness > most {
			best, most = o.From, finding.Nearness
		}
	}
	if len(rooms) < 2 {
		return
	}
	t.nearOf++
	if best == m.Seat {
		t.near++
	}
}

// table prints what was called for each true stage.
func (t *tally) table() {
	for _, truth := range trueStages {
		fmt.Printf("  %-26s", truth)
		for _, call := range engine.Stages {
			fmt.Printf(" %4d", t.calls[[2]engine.Stage{truth, call}])
		}
		fmt.Println()
	}
}

func (t *tally) print(exact bool) {
	how := "as people see"
	if exact {
		how = "exact"
	}
	n := float64(t.n)
	fmt.Printf("%s: top stage right %.3f, mean over the stages %.3f, set holds %.3f at mean size %.2f, regime %.3f, nearest %.3f of %d\n",
		how, float64(t.top)/n, t.even(), float64(t.held)/n, float64(t.size)/n, float64(t.regime)/n, ratio(t.near, t.nearOf), t.nearOf)
	t.table()
	for h, hazard := range engine.Hazards {
		fmt.Printf("  %s: flagged %d of %d with it, %d of %d without\n", hazard, t.flagged[h][0], t.flagged[h][1], t.clear[h][0], t.clear[h][1])
		if t.with[h][1]+t.without[h][1] < t.n {
			fmt.Printf("    where it is not past: %d of %d with it, %d of %d without\n", t.with[h][0], t.with[h][1], t.without[h][0], t.without[h][1])
		}
	}
}
