package rates

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
)

// spent is an allowance of one, until it is whole again.
type spent struct{ whole time.Time }

func table(clock *time.Time, many int) *Table[*spent] {
	return New(func() time.Time { return *clock }, many, func(s *spent, now time.Time) bool { return !now.Before(s.whole) })
}

func take(t *Table[*spent], name string, until time.Time) {
	t.Ask(name, func() *spent { return &spent{} }, func(s *spent, _ time.Time) bool {
		s.whole = until
		return true
	})
}

func TestOnlyWhatIsWholeIsForgottenAndOnlyOfMany(t *testing.T) {
	clock := time.Date(2026, 1, 1, 12, 0, 0, 0, time.UTC)
	kept := table(&clock, 3)
	take(kept, "used", clock.Add(time.Hour))
	take(kept, "whole", clock)
	take(kept, "third", clock)
	assert.Len(t, kept.of, 3, "fewer than many are left alone")
	take(kept, "fourth", clock)
	assert.Len(t, kept.of, 2)
	assert.Contains(t, kept.of, "used")
	kept.Forget("used")
	assert.NotContains(t, kept.of, "used")
}

// A sweep visits all, so that it comes once a second; and a clock set back by an
// hour does not put it off for that hour.
func TestATableIsSweptOnceASecondByAnyClock(t *testing.T) {
	clock := time.Date(2026, 1, 1, 12, 0, 0, 0, time.UTC)
	kept := table(&clock, 1)
	take(kept, "a", clock)
	take(kept, "b", clock) // a is forgotten
	take(kept, "c", clock) // too soon for b
	assert.Len(t, kept.of, 2)
	clock = clock.Add(-time.Hour)
	take(kept, "d", clock)
	assert.Len(t, kept.of, 3, "an hour ago nothing was whole yet")
	clock = clock.Add(time.Hour + time.Second)
	take(kept, "e", clock)
	assert.Len(t, kept.of, 1)
}
