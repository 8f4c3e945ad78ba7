package crowd

import (
	"context"
	"fmt"
	"slices"
	"sync"
	"time"
)

// Round waits for one view at every phone of a crowd and keeps when it came.
type Round struct {
	mu      sync.Mutex
	seq     uint64
	missing map[*Phone]bool
	took    []time.Duration
	began   time.Time
	done    chan struct{}
}

// Begin starts a round in which every phone is to hold seq or more.
func (r *Round) Begin(phones []*Phone, seq uint64) {
	r.mu.Lock()
	defer r.mu.Unlock()
	r.seq, r.missing, r.took, r.done = seq, make(map[*Phone]bool, len(phones)), make([]time.Duration, 0, len(phones)), make(chan struct{})
	for _, p := range phones {
		r.missing[p] = true
	}
	r.began = time.Now()
}

// Arrived is the Arrival of a crowd that is measured in rounds.
func (r *Round) Arrived(p *Phone, seq uint64, at time.Time) {
	r.mu.Lock()
	defer r.mu.Unlock()
	if seq < r.seq || !r.missing[p] {
		return
	}
	delete(r.missing, p)
	r.took = append(r.took, at.Sub(r.began))
	if len(r.missing) == 0 {
		close(r.done)
	}
}

// Wait returns how long each phone waited, in order of length.
func (r *Round) Wait(ctx context.Context) ([]time.Duration, error) {
	select {
	case <-r.done:
	case <-ctx.Done():
		r.mu.Lock()
		defer r.mu.Unlock()
		cut := 0
		for p := range r.missing {
			select {
			case <-p.Over():
				cut++
			default:
			}
		}
		return nil, fmt.Errorf("crowd: %d phones never got view %d, the sockets of %d of them had ended", len(r.missing), r.seq, cut)
	}
	r.mu.Lock()
	defer r.mu.Unlock()
	slices.Sort(r.took)
	return r.took, nil
}

// Each does something for every phone, so many at a time, and returns the first
// error.
func Each(phones []*Phone, atOnce int, do func(n int, p *Phone) error) error {
	gate, faults := make(chan struct{}, atOnce), make(chan error, len(phones))
	var all sync.WaitGroup
	for n, p := range phones {
		gate <- struct{}{}
		all.Go(func() {
			defer func() { <-gate }()
			if err := do(n, p); err != nil {
				faults <- err
			}
		})
	}
	all.Wait()
	select {
	case err := <-faults:
		return err
	default:
		return nil
	}
}

// Percentile of durations in order, in milliseconds.
func Percentile(sorted []time.Duration, share float64) float64 {
	if len(sorted) == 0 {
		return 0
	}
	at := min(len(sorted)-1, int(share*float64(len(sorted))))
	return float64(sorted[at].Microseconds()) / 1000
}
