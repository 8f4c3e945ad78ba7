package desk

import (
	"time"

	"golang.org/x/time/rate"

	"lintel/server/rates"
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
)

type tries struct{ *rates.Table[*rate.Limiter] }

func newTries(now func() time.Time) *tries {
	return &tries{rates.New(now, manyTries, func(own *rate.Limiter, now time.Time) bool {
		return own.TokensAt(now) >= float64(own.Burst())
	})}
}

// may reports whether one more try is allowed. Who gets in is forgotten, and so
// given back what they used up before.
func (t *tries) may(name string, known bool) bool {
	every, burst := strangerEvery, strangerBurst
	if known {
		every, burst = knownEvery, knownBurst
	}
	fresh := func() *rate.Limiter { return rate.NewLimiter(rate.Every(every), burst) }
	return t.Ask(name, fresh, func(own *rate.Limiter, now time.Time) bool { return own.AllowN(now, 1) })
}
