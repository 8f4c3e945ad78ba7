package bench

import (
	"context"
	"fmt"
	"strings"
)

const tapPaintGoalMS = 50.0

// tapPaint is from a tap to the next paint on a slow phone. Control: a button
// on an empty page, in the same run.
var tapPaint = Figure{
	Name: "tap_paint", Unit: "ms", Goal: "50 at the 98th percentile", Slow: true,
	Measure: func(ctx context.Context) (Result, error) {
		var m tapReport
		if err := onOwnServer(ctx, &m, "tap-paint.mjs"); err != nil {
			return Result{}, err
		}
		return m.result(), nil
	},
}

// tapReport is what pwa/bench/tap-paint.mjs prints.
type tapReport struct {
	P98     float64 `json:"p98_ms"`
	Median  float64 `json:"median_ms"`
	Taps    int     `json:"taps"`
	Control float64 `json:"control_ms"`
	// ControlMedian is that of the empty page.
	ControlMedian float64  `json:"control_median_ms"`
	Complaints    []string `json:"complaints"`
}

func (m tapReport) result() Result {
	return Result{
		Ours: m.P98, Control: m.Control, Holds: m.Taps > 0 && m.P98 <= tapPaintGoalMS && len(m.Complaints) == 0,
		How: fmt.Sprintf("98th percentile of %d taps through the screens and a drill (median %.0f), from the touch to the next frame presented as the browser tells (Event Timing, steps of 8 ms), processor 4 times slower; %d faults on the page; control: a button on an empty page (median %.0f)",
			m.Taps, m.Median, len(m.Complaints), m.ControlMedian),
	}
}

// lighthouse is the page auditor's judgement of Home, Size-up and Drill, of each
// category the lowest. Control: a page of one heading and one sentence, in the
// same run.
var lighthouse = Figure{
	Name: "lighthouse", Unit: "points", Goal: "100 each", Slow: true,
	Measure: func(ctx context.Context) (Result, error) {
		var m auditReport
		if err := onOwnServer(ctx, &m, "lighthouse.mjs"); err != nil {
			return Result{}, err
		}
		return m.result(), nil
	},
}

// audit is one page's points; nil where the auditor gave none.
type audit struct {
	Performance   *float64 `json:"performance"`
	Accessibility *float64 `json:"accessibility"`
	Practices     *float64 `json:"best-practices"`
	Failed        []string `json:"failed"`
	Unjudged      []string `json:"unjudged"` // what the auditor could not judge, and its own word why
	Version       string   `json:"version"`
}

// auditReport is what pwa/bench/lighthouse.mjs prints.
type auditReport struct {
	Ours    audit `json:"ours"`
	Control audit `json:"control"`
}

func (m auditReport) result() Result {
	failed := "nothing failed"
	if len(m.Ours.Failed) > 0 {
		failed = "failed: " + strings.Join(m.Ours.Failed, ", ")
	}
	if len(m.Ours.Unjudged) > 0 {
		failed += "; not judged: " + strings.Join(m.Ours.Unjudged, ", ")
	}
	return Result{
		Ours: m.Ours.points(), Control: m.Control.points(), Holds: m.Ours.full(),
		How: fmt.Sprintf("lighthouse %s on Home, Size-up and Drill, the lowest of each, its own slow phone; %s; control: a page of one sentence", m.Ours.Version, failed),
	}
}

func (a audit) points() map[string]float64 {
	points := map[string]float64{}
	for name, p := range map[string]*float64{"performance": a.Performance, "accessibility": a.Accessibility, "practices": a.Practices} {
		if p != nil {
			points[name] = *p
		}
	}
	return points
}

func (a audit) full() bool {
	for _, p := range []*float64{a.Performance, a.Accessibility, a.Practices} {
		if p == nil || *p < 100 {
			return false
		}
	}
	return true
}

// onOwnServer starts this binary's own server and runs a script on its address.
func onOwnServer(ctx context.Context, into any, name string) error {
	server, err := startSelf(ctx)
	if err != nil {
		return err
	}
	defer server.stop()
	return script(ctx, into, name, server.url)
}
