package bench

import (
	"context"
	"encoding/json"
	"fmt"
	"strconv"
)

const (
	historiesHere  = 20_000
	historiesBatch = 5_000 // of the long run: under ten seconds
)

// histories is what pwa/bench/sync-histories.mjs states.
type histories struct {
	Histories int             `json:"histories"`
	Events    int             `json:"events"`
	Crashes   int             `json:"crashes"`
	Refused   int             `json:"refused"`
	Wrong     int             `json:"wrong"`
	Differing int             `json:"differing"`
	First     json.RawMessage `json:"first_wrong"`
	Found     map[string]*int `json:"found_after"`
}

// syncHistories lives random months of a phone and its server. Control: the same
// months with a bug planted, each of which must be found.
var syncHistories = Figure{
	Name: "sync_histories", Unit: "histories gone wrong", Goal: "0 of 20,000, every planted bug found (a million in the long run)",
	Measure: func(ctx context.Context) (Result, error) {
		h, err := liveHistories(ctx, 1, historiesHere)
		if err != nil {
			return Result{}, err
		}
		found := 0
		for _, after := range h.Found {
			if after != nil {
				found++
			}
		}
		return Result{
			Ours: float64(h.Wrong), Control: map[string]float64{"planted": float64(len(h.Found)), "found": float64(found)},
			Holds: h.Wrong == 0 && h.Differing == 0 && found == len(h.Found) && found >= 3,
			How: fmt.Sprintf("%d histories with %d events, %d crashes of the phone and %d refused by a full disk, over requests lost, doubled and late; each lived twice, %d came out otherwise the second time",
				h.Histories, h.Events, h.Crashes, h.Refused, h.Differing),
		}, nil
	},
	Long: &Long{
		Goal: 1_000_000, Unit: "histories",
		Stamp: stampOf("pwa/src/local/self.ts", "pwa/src/local/journal.ts", "pwa/src/local/sync.ts", "pwa/src/local/sim/history.ts", "pwa/src/local/sim/disk.ts", "pwa/src/local/sim/network.ts"),
		Run: func(ctx context.Context, from uint64) (uint64, error) {
			for ctx.Err() == nil {
				h, err := liveHistories(context.WithoutCancel(ctx), from+1, historiesBatch)
				if err != nil {
					return from, err
				}
				if h.Wrong > 0 || h.Differing > 0 {
					return from, fmt.Errorf("a history went wrong: %s", h.First)
				}
				from += historiesBatch
			}
			return from, nil
		},
	},
}

func liveHistories(ctx context.Context, first uint64, count int) (h histories, err error) {
	return h, script(ctx, &h, "sync-histories.mjs", strconv.Itoa(count), strconv.FormatUint(first, 10))
}
