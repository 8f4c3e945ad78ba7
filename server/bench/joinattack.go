package bench

import (
	"context"
	"errors"
	"fmt"
	"net/http"
	"slices"
	"sync"
	"sync/atomic"
	"time"

	"lintel/server/bench/crowd"
	"lintel/server/class"
	"lintel/server/desk"
)

const (
	attackers   = 5000
	guesses     = 1_000_000
	attackLanes = 512
	honest      = 300 // who join by QR while it goes on
	honestGoal  = time.Second
)

// joinAttack guesses at codes beside a live class, with thousands of registered
// devices, while honest phones join by QR. Control: the same joins with nobody guessing.
var joinAttack = Figure{
	Name: "join_attack", Unit: "ms", Goal: "a million guesses: honest joins within 1,000 ms at the 99th percentile, no hit", Slow: true,
	Measure: func(ctx context.Context) (r Result, err error) {
		h, err := openHall(ctx, 0)
		if err != nil {
			return Result{}, err
		}
		defer func() { err = errors.Join(err, h.close()) }()
		var all []*crowd.Phone
		for n := range attackers + 2*honest {
			all = append(all, crowd.Device(n))
		}
		if err := h.whileDown(ctx, func(data string) error { return register(data, all) }); err != nil {
			return Result{}, err
		}
		calm, err := h.joining(ctx, all[attackers:attackers+honest])
		if err != nil {
			return Result{}, err
		}
		attack, stop := context.WithCancel(ctx)
		var tried, hits atomic.Int64
		var lanes sync.WaitGroup
		for lane := range attackLanes {
			lanes.Go(func() { h.guess(attack, all[:attackers], lane, &tried, &hits) })
		}
		under, err := h.joining(ctx, all[attackers+honest:])
		for err == nil && tried.Load() < guesses && ctx.Err() == nil {
			time.Sleep(50 * time.Millisecond)
		}
		stop()
		lanes.Wait()
		if err != nil {
			return Result{}, err
		}
		p99 := crowd.Percentile(under, 0.99)
		return Result{
			Ours: map[string]float64{"p99_ms": p99, "hits": float64(hits.Load())}, Control: crowd.Percentile(calm, 0.99),
			Holds: p99 <= float64(honestGoal.Milliseconds()) && hits.Load() == 0 && tried.Load() >= guesses,
			How: fmt.Sprintf("%d guesses from %d devices in %d lanes; chance of one hit by them %.1e as computed; %d honest phones joined by QR meanwhile; control: as many with nobody guessing", tried.Load(), attackers, attackLanes,
				class.Chance(guesses, 1), honest),
		}, nil
	},
}

// joining lets phones join by QR one after another and returns how long each took.
func (h *hall) joining(ctx context.Context, phones []*crowd.Phone) ([]time.Duration, error) {
	var took []time.Duration
	for _, p := range phones {
		began := time.Now()
		if err := p.Join(ctx, h.class); err != nil {
			return nil, err
		}
		took = append(took, time.Since(began))
	}
	slices.Sort(took)
	return took, nil
}

// guess tries codes until told to stop, or until all guesses are made: half of the
// lanes short ones, half as long as a code grows.
func (h *hall) guess(ctx context.Context, devices []*crowd.Phone, lane int, tried, hits *atomic.Int64) {
	length := []int{class.CodeLength, class.GrownLength}[lane%2]
	for n := lane; ctx.Err() == nil && tried.Add(1) <= guesses; n += attackLanes {
		p := devices[n%len(devices)]
		err := h.class.Call(ctx, http.MethodPost, "api/v1/join", p.Authorization(), map[string]any{"v": 1, "code": desk.NewCode(length), "call_signs": map[string]string{"a": "Guess"}}, nil)
		if err == nil {
			hits.Add(1)
		}
	}
}
