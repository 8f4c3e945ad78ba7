// Package rates keeps what each of many may still do. Those who have used up
// nothing are forgotten, which changes nothing for them, so that the table stays
// small however many names strangers make up.
package rates

import (
	"sync"
	"time"
)

// sweepEvery is how seldom a large table is gone through, as that visits all.
// Chosen by us.
const sweepEvery = time.Second

// Table holds an allowance for each name.
type Table[A any] struct {
	now   func() time.Time
	many  int
	whole func(A, time.Time) bool

	mu    sync.Mutex
	of    map[string]A
	swept time.Time
}

// New makes a table that is swept from many names on. whole reports whether
// nothing of an allowance is used up.
func New[A any](now func() time.Time, many int, whole func(A, time.Time) bool) *Table[A] {
	return &Table[A]{now: now, many: many, whole: whole, of: map[string]A{}}
}

// Ask puts a question to a name's allowance, which fresh makes where there is none.
func (t *Table[A]) Ask(name string, fresh func() A, ask func(own A, now time.Time) bool) bool {
	t.mu.Lock()
	defer t.mu.Unlock()
	now := t.now()
	own, ok := t.of[name]
	if !ok {
		t.sweep(now)
		own = fresh()
		t.of[name] = own
	}
	return ask(own, now)
}

// Forget gives a name all of its allowance back.
func (t *Table[A]) Forget(name string) {
	t.mu.Lock()
	defer t.mu.Unlock()
	delete(t.of, name)
}

// sweep forgets allowances that are whole. A clock set back does not put it off.
func (t *Table[A]) sweep(now time.Time) {
	if len(t.of) < t.many || now.Sub(t.swept).Abs() < sweepEvery {
		return
	}
	t.swept = now
	for name, own := range t.of {
		if t.whole(own, now) {
			delete(t.of, name)
		}
	}
}
