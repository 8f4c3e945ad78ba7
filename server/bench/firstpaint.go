package bench

import (
	"context"
	"fmt"
)

// firstPaint is the first screen on a slow phone, and whether it came before
// the engine.
var firstPaint = Figure{
	Name: "first_paint", Unit: "ms", Goal: "1.15 times the control, before the engine; blocking 50 ms, shift 0", Slow: true,
	Measure: func(ctx context.Context) (Result, error) {
		server, err := startSelf(ctx)
		if err != nil {
			return Result{}, err
		}
		defer server.stop()
		var m struct {
			Largest float64  `json:"largest_ms"`
			Control float64  `json:"control_ms"`
			Blocked float64  `json:"blocked_ms"`
			Shift   float64  `json:"shift"`
			Bytes   float64  `json:"bytes"`
			Engine  *float64 `json:"engine_ms"`
			Rounds  int      `json:"rounds"`
		}
		if err := script(ctx, &m, "first-paint.mjs", server.url); err != nil {
			return Result{}, err
		}
		beforeEngine := m.Engine == nil || m.Largest < *m.Engine
		return Result{
			Ours: m.Largest, Control: m.Control,
			Holds: m.Largest <= 1.15*m.Control && beforeEngine && m.Blocked <= 50 && m.Shift == 0,
			How: fmt.Sprintf("largest paint at 150 ms, 1.6 Mbit/s, processor 4 times slower, median of %d; engine arrived %s; blocking %.0f ms, shift %.3f, %.1f kB before the paint; control: a null page of equal bytes",
				m.Rounds, arrival(m.Engine), m.Blocked, m.Shift, m.Bytes/1000),
		}, nil
	},
}

func arrival(ms *float64) string {
	if ms == nil {
		return "only when asked for"
	}
	return fmt.Sprintf("at %.0f ms", *ms)
}
