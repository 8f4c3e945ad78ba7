package httpapi

import (
	"time"

	"golang.org/x/time/rate"

	"lintel/server/rates"
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
)

// allowance is what one device may still do.
type allowance struct {
	requests, bytes, events *rate.Limiter
}

// whole reports whether nothing of it is used up.
func (a *allowance) whole(now time.Time) bool {
	return a.requests.TokensAt(now) >= requestBurst && a.bytes.TokensAt(now) >= byteBurst && a.events.TokensAt(now) >= eventBurst
}

func newAllowance() *allowance {
	return &allowance{
		requests: rate.NewLimiter(requestsPerS, requestBurst),
		bytes:    rate.NewLimiter(bytesPerS, byteBurst),
		events:   rate.NewLimiter(eventsPerS, eventBurst),
	}
}

// limits hold the allowances.
type limits struct {
	now       func() time.Time
	newcomers *rate.Limiter
	bodies    *rate.Limiter
	devices   *rates.Table[*allowance]
}

func newLimits(now func() time.Time) *limits {
	return &limits{
		now: now, newcomers: rate.NewLimiter(newcomersPerS, newcomersBurst), bodies: newLargeBodies(),
		devices: rates.New(now, manyTracked, (*allowance).whole),
	}
}

// newcomer reports whether one more device may register now.
func (l *limits) newcomer() bool { return l.newcomers.AllowN(l.now(), 1) }

// request reports whether a device may send one request of that many bytes.
func (l *limits) request(device string, bytes int) bool {
	return l.devices.Ask(device, newAllowance, func(own *allowance, now time.Time) bool {
		return own.requests.AllowN(now, 1) && own.bytes.AllowN(now, bytes)
	})
}

// events reports whether a device may add that many events. It bounds how many
// fires one device can have the server work out again.
func (l *limits) events(device string, n int) bool {
	return l.devices.Ask(device, newAllowance, func(own *allowance, now time.Time) bool { return own.events.AllowN(now, n) })
}
