package desk

import (
	"sync"
	"time"

	"golang.org/x/time/rate"
)

// Who tries to sign in, by what the server knows of where they sit. Strangers
// share one allowance an account, which they can use up; a browser that has been
// signed in before, and the server's own machine, each have their own, which
// strangers cannot touch. All rates are chosen by us.
const (
	strangerEvery = 30 * time.Second
	strangerBurst = 10
	knownEvery    = 10 * time.Second
	knownBurst    = 20
	manyTries     = 10_000
	sweepEvery    = time.Second
)

type tries struct {
	now func() time.Time

	mu       sync.Mutex
	limiters map[string]*rate.Limiter
	swept    time.Time
}

func newTries(now func() time.Time) *tries {
	return &tries{now: now, limiters: map[string]*rate.Limiter{}}
}

// may reports whether one more try is allowed.
func (t *tries) may(name string, known bool) bool {
	every, burst := strangerEvery, strangerBurst
	if known {
		every, burst = knownEvery, knownBurst
	}
	t.mu.Lock()
	defer t.mu.Unlock()
	own, ok := t.limiters[name]
	if !ok {
		t.sweep()
		own = rate.NewLimiter(rate.Every(every), burst)
		t.limiters[name] = own
	}
	return own.AllowN(t.now(), 1)
}

// forgive gives back what a person used up before they got in.
func (t *tries) forgive(name string) {
	t.mu.Lock()
	defer t.mu.Unlock()
	delete(t.limiters, name)
}

// sweep forgets allowances that are whole again; now and then only, as it visits
// all.
func (t *tries) sweep() {
	now := t.now()
	if len(t.limiters) < manyTries || now.Sub(t.swept).Abs() < sweepEvery {
		return
	}
	t.swept = now
	for name, own := range t.limiters {
		if own.TokensAt(now) >= float64(own.Burst()) {
			delete(t.limiters, name)
		}
	}
}
