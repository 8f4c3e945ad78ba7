package bench

import (
	"context"
	"fmt"
	"maps"
	"slices"
	"strconv"
	"time"
)

// pictureTruth is how well an instrument that sees only photographs recovers
// what the picture was given. Control: renderers that lie, seen by the same
// instrument in the same run; the best of them is printed.
var pictureTruth = Figure{
	Name: "picture_truth", Unit: "correlation", Goal: "0.98, every sweep in order, three cues within 5 % when the fourth changes, every liar found out", Slow: true,
	Measure: func(ctx context.Context) (Result, error) {
		var m pictureReport
		if err := script(ctx, &m, "../fidelity/picture-truth.mjs"); err != nil {
			return Result{}, err
		}
		return m.result(), nil
	},
}

// pictureReport is what pwa/fidelity/picture-truth.mjs prints.
type pictureReport struct {
	Seed         int                           `json:"seed"`
	Scenes       int                           `json:"scenes"`
	Lowest       float64                       `json:"lowest"`
	Correlations map[string]map[string]float64 `json:"correlations"`
	Sweeps       struct {
		Ordered float64 `json:"ordered"`
		Within  float64 `json:"within"`
		Pairs   int     `json:"pairs"`
	} `json:"sweeps"`
	Liars map[string]float64 `json:"liars"`
	Holds bool               `json:"holds"`
}

func (m pictureReport) result() Result {
	ours := map[string]float64{"lowest": m.Lowest}
	for cue, both := range m.Correlations {
		ours[cue] = min(both["pearson"], both["spearman"])
	}
	liar := slices.Max(slices.Collect(maps.Values(m.Liars)))
	return Result{
		Ours: ours, Control: liar, Holds: m.Holds,
		How: fmt.Sprintf("%d scenes of unseen seeds (run seed %d) drawn by the app's renderer, photographed over black and over white; lowest of Pearson and Spearman; %.0f %% of %d neighbours in sweeps in order; %.0f %% of the other cues within 5 %%; control: the best of %d lying renderers",
			m.Scenes, m.Seed, 100*m.Sweeps.Ordered, m.Sweeps.Pairs, 100*m.Sweeps.Within, len(m.Liars)),
	}
}

// frameScript is what drawing the smoke costs on a slow phone: on the thread that
// draws, and on the page. Control: the same building with nothing coming out of
// it, in the same run.
var frameScript = Figure{
	Name: "frame_script", Unit: "ms", Goal: "4 on either thread; coarser within 1 s when late; nothing drawn while hidden", Slow: true,
	Measure: func(ctx context.Context) (Result, error) {
		var m frameReport
		if err := script(ctx, &m, "frame-script.mjs"); err != nil {
			return Result{}, err
		}
		return m.result(), nil
	},
}

const frameGoalMS = 4.0

// frameReport is what pwa/bench/frame-script.mjs prints.
type frameReport struct {
	P95     float64 `json:"p95_ms"`
	Page    float64 `json:"page_ms"`
	Control float64 `json:"control_ms"`
	Four    struct {
		Median   float64 `json:"median"`
		Pictures int     `json:"pictures"`
		First    float64 `json:"first_p95"`
	} `json:"four"`
	Taps struct {
		P98 float64 `json:"p98"`
	} `json:"taps"`
	Coarser *float64 `json:"coarser_s"`
	Hidden  struct {
		Drawn int `json:"drawn"`
		After int `json:"after"`
	} `json:"hidden"`
}

func (m frameReport) result() Result {
	coarser := "was not seen to get coarser"
	if m.Coarser != nil {
		coarser = fmt.Sprintf("coarser after %.1f s when late", *m.Coarser)
	}
	paused := m.Hidden.Drawn == 0 && m.Hidden.After > 0
	return Result{
		Ours: map[string]float64{"picture": m.P95, "page": m.Page}, Control: m.Control,
		Holds: min(m.P95, m.Page) > 0 && max(m.P95, m.Page) <= frameGoalMS && m.Coarser != nil && *m.Coarser <= 1 && paused,
		How: fmt.Sprintf("script of each picture, 95th percentile of %d (median %.1f; of the first 4 s %.1f), four openings of the box smoking, on its own thread slowed 4 times; page: script of each frame on the page's thread, slowed 4 times; 98th percentile of taps while it draws %.0f ms; %s; %d pictures while hidden; control: nothing smokes",
			m.Four.Pictures, m.Four.Median, m.Four.First, m.Taps.P98, coarser, m.Hidden.Drawn),
	}
}

// pictureHeap is whether the memory of a running picture grows. Control: the
// same picture beside a planted leak, in the same run, which must be caught.
var pictureHeap = Figure{
	Name: "picture_heap", Unit: "share", Goal: "0.05 more after three minutes, thirty in the long run; a planted leak caught", Slow: true,
	Measure: func(ctx context.Context) (Result, error) {
		m, err := measureHeap(ctx, heapMinutes)
		return m.result(), err
	},
	Long: &Long{
		Goal: heapLongMinutes, Unit: "minutes of a running picture", Slice: (heapLongMinutes + heapSpare) * time.Minute,
		Stamp: stampOf("pwa/src/render/show.ts", "pwa/src/render/scene.tsx", "pwa/src/render/picture.ts", "pwa/src/render/paint.ts", "pwa/src/render/film.ts", "pwa/src/render/stage/players.ts", "pwa/src/render/stage/scene-player.ts", "pwa/src/render/stage/stage.ts", "pwa/src/render/stage/teller.ts", "pwa/bench/picture-heap.mjs"),
		Run:   runHeap,
	},
}

const (
	heapMinutes     = 3
	heapLongMinutes = 30
	heapSpare       = 2 // to start and to stop
)

// runHeap watches one picture as long as the context allows, up to the goal. A
// picture that was watched for less before does not count towards it.
func runHeap(ctx context.Context, from uint64) (uint64, error) {
	minutes := heapLongMinutes
	if until, ok := ctx.Deadline(); ok {
		minutes = min(minutes, sitting(time.Until(until)))
	}
	if minutes < 1 || uint64(minutes) <= from {
		<-ctx.Done()
		return from, nil
	}
	m, err := measureHeap(ctx, minutes)
	if err != nil {
		return from, err
	}
	if !m.Holds {
		return from, fmt.Errorf("after %d minutes what lives had grown by %.1f %%, beside a planted leak by %.1f %%", minutes, 100*m.Grew, 100*m.Leak)
	}
	return uint64(minutes), nil
}

// sitting is how many minutes can be watched in a time: to the nearest, as a moment
// of it is always gone by now.
func sitting(left time.Duration) int { return int(left.Round(time.Minute)/time.Minute) - heapSpare }

func measureHeap(ctx context.Context, minutes int) (heapReport, error) {
	var m heapReport
	err := script(ctx, &m, "picture-heap.mjs", "-judge", "-minutes", strconv.Itoa(minutes))
	return m, err
}

// heapReport is what pwa/bench/picture-heap.mjs prints.
type heapReport struct {
	Minutes float64 `json:"minutes"`
	// Scenes is how often the scene changed.
	Scenes  int     `json:"scenes"`
	EarlyKB float64 `json:"early_kb"`
	LateKB  float64 `json:"late_kb"`
	Grew    float64 `json:"grew"`
	Leak    float64 `json:"leak_grew"`
	Holds   bool    `json:"holds"`
}

func (m heapReport) result() Result {
	return Result{
		Ours: m.Grew, Control: m.Leak, Holds: m.Holds,
		How: fmt.Sprintf("what lives after a collection, late over early in %.0f minutes of four openings smoking, with %d changes of scene: %.0f kB, then %.0f kB; control: the same pictures with ten frames of the fire kept a second",
			m.Minutes, m.Scenes, m.EarlyKB, m.LateKB),
	}
}
