package bench

import (
	"context"
	"fmt"
	"maps"
	"slices"
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

// frameScript is what drawing the smoke costs on a slow phone. Control: the
// same building with nothing coming out of it, in the same run.
var frameScript = Figure{
	Name: "frame_script", Unit: "ms", Goal: "4; coarser within 1 s when late; nothing drawn while hidden", Slow: true,
	Measure: func(ctx context.Context) (Result, error) {
		var m frameReport
		if err := script(ctx, &m, "frame-script.mjs"); err != nil {
			return Result{}, err
		}
		return m.result(), nil
	},
}

// frameReport is what pwa/bench/frame-script.mjs prints.
type frameReport struct {
	P95     float64 `json:"p95_ms"`
	Control float64 `json:"control_ms"`
	Four    struct {
		Median   float64 `json:"median"`
		Pictures int     `json:"pictures"`
	} `json:"four"`
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
		Ours: m.P95, Control: m.Control,
		Holds: m.P95 <= 4 && m.Coarser != nil && *m.Coarser <= 1 && paused,
		How: fmt.Sprintf("script of each picture, 95th percentile of %d (median %.1f), four openings of the box smoking, processor 4 times slower; %s; %d pictures while hidden; control: nothing smokes",
			m.Four.Pictures, m.Four.Median, coarser, m.Hidden.Drawn),
	}
}
