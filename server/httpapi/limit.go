package httpapi

import (
	"sync"
	"time"

	"golang.org/x/time/rate"
)

// Rates, all chosen by us. They are kept per device that has proved itself and
// never per address: a whole class may share one. A month offline, 3,000
// answers of 10 kB, drains within the bursts.
const (
	requestsPerS   = 10
	requestBurst   = 100
	bytesPerS      = 16 << 10
	byteBurst      = 32 << 20
	eventsPerS     = 1
	eventBurst     = 5000
	newcomersPerS  = 20
	newcomersBurst = 2000

	manyTracked = 20_000
	sweepEvery  = time.Second
)

// allowance is what one device may still do.
type allowance struct {
	requests, bytes, events *rate.Limiter
}

// whole reports whether nothing of it is used up.
func (a *allowance) whole(now time.Time) bool {
	return a.requests.TokensAt(now) >= requestBurst && a.bytes.TokensAt(now) >= byteBurst && a.events.TokensAt(now) >= eventBurst
}

// limits hold the allowances.
type limits struct {
	now       func() time.Time
	newcomers *rate.Limiter

	mu      sync.Mutex
	devices map[string]*allowance
	swept   time.Time
}

func newLimits(now func() time.Time) *limits {
	return &limits{now: now, newcomers: rate.NewLimiter(newcomersPerS, newcomersBurst), devices: map[string]*allowance{}}
}

// newcomer reports whether one more device may register now.
func (l *limits) newcomer() bool { return l.newcomers.AllowN(l.now(), 1) }

// request reports whether a device may send one request of that many bytes.
func (l *limits) request(device string, bytes int) bool {
	own, now := l.of(device), l.now()
	return own.requests.AllowN(now, 1) && own.bytes.AllowN(now, bytes)
}

// events reports whether a device may add that many events. It bounds how many
// fires one device can have the server work out again.
func (l *limits) events(device string, n int) bool {
	return l.of(device).events.AllowN(l.now(), n)
}

func (l *limits) of(device string) *allowance {
	l.mu.Lock()
	defer l.mu.Unlock()
	own, ok := l.devices[device]
	if !ok {
		l.sweep()
		own = &allowance{
			requests: rate.NewLimiter(requestsPerS, requestBurst),
			bytes:    rate.NewLimiter(bytesPerS, byteBurst),
			events:   rate.NewLimiter(eventsPerS, eventBurst),
		}
		l.devices[device] = own
	}
	return own
}

// sweep forgets devices whose allowance is whole again, so that the table stays
// small; forgetting them changes nothing. Now and then only, as it visits all.
func (l *limits) sweep() {
	now := l.now()
	if len(l.devices) < manyTracked || now.Sub(l.swept).Abs() < sweepEvery {
		return
	}
	l.swept = now
	for device, own := range l.devices {
		if own.whole(now) {
			delete(l.devices, device)
		}
	}
}
