package httpapi

import (
	"sync"
	"time"

	"golang.org/x/time/rate"
)

// Rates, all chosen by us. They are kept per device that has proved itself and
// never per address: a whole class may share one. A month offline, 3,000
// answers of 10 kB, drains at once within the burst of bytes.
const (
	requestsPerS   = 10
	requestBurst   = 100
	bytesPerS      = 64 << 10
	byteBurst      = 64 << 20
	newcomersPerS  = 20
	newcomersBurst = 2000
	maxTracked     = 20_000
)

// allowance is what one device may still do.
type allowance struct {
	requests, bytes *rate.Limiter
}

// limits hold the allowances.
type limits struct {
	now       func() time.Time
	newcomers *rate.Limiter

	mu      sync.Mutex
	devices map[string]*allowance
}

func newLimits(now func() time.Time) *limits {
	return &limits{now: now, newcomers: rate.NewLimiter(newcomersPerS, newcomersBurst), devices: map[string]*allowance{}}
}

// newcomer reports whether one more device may register now.
func (l *limits) newcomer() bool { return l.newcomers.AllowN(l.now(), 1) }

// allow reports whether a device may send one request of that many bytes.
func (l *limits) allow(device string, bytes int) bool {
	own := l.of(device)
	now := l.now()
	return own.requests.AllowN(now, 1) && own.bytes.AllowN(now, bytes)
}

func (l *limits) of(device string) *allowance {
	l.mu.Lock()
	defer l.mu.Unlock()
	own, ok := l.devices[device]
	if !ok {
		l.sweep()
		own = &allowance{rate.NewLimiter(requestsPerS, requestBurst), rate.NewLimiter(bytesPerS, byteBurst)}
		l.devices[device] = own
	}
	return own
}

// sweep forgets devices whose allowance is whole again, so that the table stays
// small; forgetting them changes nothing.
func (l *limits) sweep() {
	if len(l.devices) < maxTracked {
		return
	}
	now := l.now()
	for device, own := range l.devices {
		if own.requests.TokensAt(now) >= requestBurst && own.bytes.TokensAt(now) >= byteBurst {
			delete(l.devices, device)
		}
	}
}
