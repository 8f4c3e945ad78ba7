package bench

import (
	"context"
	"errors"
	"fmt"
	"math/rand/v2"
	"net/url"
	"os"
	"sync"
	"sync/atomic"
	"syscall"
	"time"

	"lintel/server/bench/crowd"
)

const (
	returnPhones = 2000
	returnWithin = 5 * time.Second
	returnGoal   = 0.99
	returnJitter = 2 * time.Second // each phone waits a random part of it, as the app does

	unreadPhones = 500
	unreadActs   = 200 // enough to fill what the system buffers for a socket that nobody reads

	cutPhones = 200
	cuts      = 10_000
	cutAtOnce = 32
)

// classReturn kills the server under a class and starts it again.
var classReturn = Figure{
	Name: "class_return", Unit: "share back within 5 s", Goal: "0.99, no gap, no repeat", Slow: true,
	Measure: func(ctx context.Context) (r Result, err error) {
		h, err := openHall(ctx, returnPhones)
		if err != nil {
			return Result{}, err
		}
		defer func() { err = errors.Join(err, h.close()) }()
		if err := errors.Join(h.connect(ctx), h.start(ctx)); err != nil {
			return Result{}, err
		}
		if _, err := h.sample(ctx, h.phones); err != nil {
			return Result{}, err
		}
		if err := h.restart(ctx); err != nil {
			return Result{}, err
		}
		back := h.returning(ctx, returnWithin)
		// The next act must find everyone, with nothing missing before it.
		if err := h.connectMissing(ctx); err != nil {
			return Result{}, err
		}
		if _, err := h.sample(ctx, h.phones); err != nil {
			return Result{}, err
		}
		repeats := repeated(h.phones)
		share := float64(back) / float64(len(h.phones))
		return Result{
			Ours: map[string]float64{"back": share, "repeats": float64(repeats)}, Holds: share >= returnGoal && repeats == 0,
			How: fmt.Sprintf("%d phones, the server killed by signal 9 and started again at the same address; each phone tries after a random part of %v, and again; back: holding the class's newest view; no control: a bare hub forgets its class", len(h.phones), returnJitter),
		}, nil
	},
}

// restart kills the server and starts it again where it was.
func (h *hall) restart(ctx context.Context, flags ...string) error {
	return h.whileDown(ctx, func(string) error { return nil }, flags...)
}

// whileDown kills the server, does something with its data, and starts it again.
func (h *hall) whileDown(ctx context.Context, do func(data string) error, flags ...string) error {
	at, err := url.Parse(h.server.url)
	if err != nil {
		return err
	}
	self, err := os.Executable()
	if err != nil {
		return err
	}
	if err := h.server.cmd.Process.Signal(syscall.SIGKILL); err != nil {
		return err
	}
	_ = h.server.cmd.Wait()
	if err := do(h.server.temp); err != nil {
		return err
	}
	again, err := startServer(ctx, self, h.server.temp, append([]string{"-addr", at.Host}, flags...)...)
	if err != nil {
		return err
	}
	h.server.cmd = again.cmd
	return nil
}

// returning lets every phone find its way back and counts who holds the newest
// view in time.
func (h *hall) returning(ctx context.Context, within time.Duration) int {
	ctx, cancel := context.WithTimeout(ctx, within)
	defer cancel()
	var back atomic.Int64
	var all sync.WaitGroup
	for _, p := range h.phones {
		all.Go(func() {
			for ctx.Err() == nil {
				select {
				case <-time.After(rand.N(returnJitter)): //nolint:gosec // jitter is no secret
				case <-ctx.Done():
					return
				}
				got := make(chan struct{}, 1)
				err := p.Connect(ctx, h.class, func(p *crowd.Phone, seq uint64, at time.Time) {
					h.round.Arrived(p, seq, at)
					if seq >= h.seq {
						select {
						case got <- struct{}{}:
						default:
						}
					}
				})
				if err != nil {
					continue
				}
				select {
				case <-got:
					back.Add(1)
					return
				case <-ctx.Done():
					return
				}
			}
		})
	}
	all.Wait()
	return int(back.Load())
}

// connectMissing brings back those whose socket has ended, as often as it takes
// until each holds the newest view.
func (h *hall) connectMissing(ctx context.Context) error {
	ctx, cancel := context.WithTimeout(ctx, patience)
	defer cancel()
	return crowd.Each(h.phones, atOnce, func(_ int, p *crowd.Phone) error {
		for {
			select {
			case <-p.Over():
				if err := p.Connect(ctx, h.class, h.round.Arrived); err != nil && ctx.Err() != nil {
					return err
				}
			case <-ctx.Done():
				return fmt.Errorf("a phone holds view %d and never got %d", p.Seen(), h.seq)
			case <-time.After(100 * time.Millisecond):
				if p.Seen() >= h.seq {
					return nil
				}
			}
		}
	})
}

func repeated(phones []*crowd.Phone) int {
	n := 0
	for _, p := range phones {
		if p.Repeated() {
			n++
		}
	}
	return n
}

// classUnread lets a tenth of the phones read nothing. Control: the same class
// before, against itself.
var classUnread = Figure{
	Name: "class_unread", Unit: "ratio", Goal: "inside the control's own spread (its 90th percentile)", Slow: true,
	Measure: func(ctx context.Context) (r Result, err error) {
		h, err := openHall(ctx, unreadPhones)
		if err != nil {
			return Result{}, err
		}
		defer func() { err = errors.Join(err, h.close()) }()
		if err := errors.Join(h.connect(ctx), h.start(ctx)); err != nil {
			return Result{}, err
		}
		deaf, rest := h.phones[:unreadPhones/10], h.phones[unreadPhones/10:]
		before, err := h.samples(ctx, rest, 2*classPairs)
		if err != nil {
			return Result{}, err
		}
		for _, p := range deaf {
			p.Deafen()
		}
		for range unreadActs {
			if _, err := h.act(ctx, rest, map[string]any{"kind": "look_extended", "add_s": 1}); err != nil {
				return Result{}, err
			}
		}
		after, err := h.samples(ctx, rest, classPairs)
		if err != nil {
			return Result{}, err
		}
		usual := median(before)
		allowed := percentile(before, 0.9) / usual
		return Result{
			Ours: median(after) / usual, Control: allowed, Holds: median(after) <= percentile(before, 0.9),
			How: fmt.Sprintf("99th percentile of %d reading phones after %d more had read nothing of %d frames, over the same before (%.1f ms); control: the 90th percentile of %d samples before, over their median", len(rest), len(deaf), unreadActs, usual, len(before)),
		}, nil
	},
}

func (h *hall) samples(ctx context.Context, who []*crowd.Phone, n int) ([]float64, error) {
	var all []float64
	for range n {
		one, err := h.sample(ctx, who)
		if err != nil {
			return nil, err
		}
		all = append(all, one)
	}
	return all, nil
}

// classCuts drops connections at random while the class goes on.
var classCuts = Figure{
	Name: "class_cuts", Unit: "cuts", Goal: "10,000 resume, no gap, no repeat", Slow: true,
	Measure: func(ctx context.Context) (r Result, err error) {
		h, err := openHall(ctx, cutPhones)
		if err != nil {
			return Result{}, err
		}
		defer func() { err = errors.Join(err, h.close()) }()
		if err := errors.Join(h.connect(ctx), h.start(ctx)); err != nil {
			return Result{}, err
		}
		resumed, err := h.cutting(ctx, cuts)
		if err != nil {
			return Result{}, err
		}
		if _, err := h.sample(ctx, h.phones); err != nil {
			return Result{}, err
		}
		repeats := repeated(h.phones)
		return Result{
			Ours: float64(resumed), Control: float64(cuts), Holds: resumed == cuts && repeats == 0,
			How: fmt.Sprintf("connections of %d phones cut without a word, %d at once, while the instructor acts; each dials again with the last view it held; afterwards every phone gets the next view and %d went back behind what they held; control: how many were cut", len(h.phones), cutAtOnce, repeats),
		}, nil
	},
}

// cutting cuts so many connections, each phone one at a time, and returns how
// many came back, while the class is acted upon.
func (h *hall) cutting(ctx context.Context, times int) (int, error) {
	acting, stop := context.WithCancel(ctx)
	var teacher sync.WaitGroup
	var taught error
	teacher.Go(func() {
		for acting.Err() == nil {
			time.Sleep(spacing)
			seq, err := h.class.Do(ctx, map[string]any{"kind": "look_extended", "add_s": 1})
			if err != nil {
				taught = err
				return
			}
			h.seq = seq
		}
	})
	var resumed atomic.Int64
	busy := make([]sync.Mutex, len(h.phones))
	rounds := make([]*crowd.Phone, times)
	err := crowd.Each(rounds, cutAtOnce, func(n int, _ *crowd.Phone) error {
		who := rand.IntN(len(h.phones)) //nolint:gosec // which phone is no secret
		busy[who].Lock()
		defer busy[who].Unlock()
		p := h.phones[who]
		p.Cut()
		<-p.Over()
		if err := p.Connect(ctx, h.class, h.round.Arrived); err != nil {
			return err
		}
		resumed.Add(1)
		return nil
	})
	stop()
	teacher.Wait()
	return int(resumed.Load()), errors.Join(err, taught)
}
