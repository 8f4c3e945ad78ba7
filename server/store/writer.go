package store

import (
	"errors"
	"sync"
	"sync/atomic"
	"time"

	bolt "go.etcd.io/bbolt"

	"lintel/quiz"
)

// Bounds of the writer, chosen by us: a queue of four full classes, and how
// long a request may wait for a place in it.
const (
	queueLen  = 1024
	groupLen  = 512
	queueWait = 2 * time.Second
)

// job is one request's writing. It first checks everything and only then
// writes: a refusal (see isRefusal) means that it wrote nothing, and the rest of
// the group goes on. Any other error undoes the whole group.
type job struct {
	do   func(*bolt.Tx) error
	done chan error
}

// writer commits jobs in groups: whatever is waiting when a commit ends goes
// into the next one.
type writer struct {
	db      *bolt.DB
	queue   chan *job
	closing sync.RWMutex // held to read while a job is being handed in
	closed  bool
	broken  atomic.Bool
	idle    chan struct{} // closed when the goroutine has ended
}

func startWriter(db *bolt.DB) *writer {
	w := &writer{db: db, queue: make(chan *job, queueLen), idle: make(chan struct{})}
	go w.run()
	return w
}

// do hands in a job and waits until it is on the disk, refused or failed.
func (w *writer) do(do func(*bolt.Tx) error) error {
	j := &job{do: do, done: make(chan error, 1)}
	if err := w.handIn(j); err != nil {
		return err
	}
	return <-j.done
}

func (w *writer) handIn(j *job) error {
	w.closing.RLock()
	defer w.closing.RUnlock()
	if err := w.state(); err != nil {
		return err
	}
	select {
	case w.queue <- j:
		return nil
	default:
	}
	patience := time.NewTimer(queueWait)
	defer patience.Stop()
	select {
	case w.queue <- j:
		return nil
	case <-patience.C:
		return quiz.ErrBusy
	}
}

func (w *writer) ready() error {
	w.closing.RLock()
	defer w.closing.RUnlock()
	return w.state()
}

func (w *writer) state() error {
	switch {
	case w.closed:
		return quiz.ErrClosed
	case w.broken.Load():
		return quiz.ErrBroken
	}
	return nil
}

// stop takes no more jobs, commits those handed in and waits for the end.
func (w *writer) stop() {
	w.closing.Lock()
	if !w.closed {
		w.closed = true
		close(w.queue)
	}
	w.closing.Unlock()
	<-w.idle
}

func (w *writer) run() {
	defer close(w.idle)
	for first := range w.queue {
		group := w.gather(first)
		for i, err := range w.commit(group) {
			group[i].done <- err
		}
	}
}

// gather takes what is waiting, without waiting for more.
func (w *writer) gather(first *job) []*job {
	group := []*job{first}
	for len(group) < groupLen {
		select {
		case j, open := <-w.queue:
			if !open {
				return group
			}
			group = append(group, j)
		default:
			return group
		}
	}
	return group
}

// commit writes a group in one transaction and returns each job's outcome.
func (w *writer) commit(group []*job) []error {
	outcomes := make([]error, len(group))
	if w.broken.Load() {
		return fill(outcomes, quiz.ErrBroken)
	}
	for {
		faulty, err := w.try(group, outcomes)
		switch {
		case faulty >= 0:
			// One job's own fault must not cost the others: leave it out and go again.
			group[faulty].do = func(*bolt.Tx) error { return nil }
			outcomes[faulty] = err
			continue
		case err == nil:
			return outcomes
		case isFull(err):
			return fill(outcomes, quiz.ErrFull)
		}
		// A commit that failed for another reason (a bad disk, a failed sync) may
		// or may not have reached the disk; only opening the file again can tell.
		w.broken.Store(true)
		return fill(outcomes, errors.Join(quiz.ErrBroken, err))
	}
}

// try runs a group's jobs and commits them. When a job fails by its own fault
// nothing is written and its place is returned, else -1 and the commit's error.
func (w *writer) try(group []*job, outcomes []error) (faulty int, err error) {
	faulty = -1
	err = w.db.Update(func(tx *bolt.Tx) error {
		for i, j := range group {
			said := j.do(tx)
			if said != nil && !isRefusal(said) {
				faulty = i
				return said
			}
			if said != nil {
				outcomes[i] = said
			}
		}
		return nil
	})
	return faulty, err
}

func fill(outcomes []error, err error) []error {
	for i := range outcomes {
		outcomes[i] = err
	}
	return outcomes
}
