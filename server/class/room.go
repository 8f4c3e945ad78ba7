package class

import (
	"encoding/json"
	"sync"
	"time"

	"lintel/quiz"
	"lintel/quiz/session"
)

// room is one class held in memory.
type room struct {
	classes *Classes
	id      string
	acts    sync.Mutex // held while an instructor's act is made durable

	mu    sync.Mutex
	row   row
	rev   uint64
	state session.State
	early map[uint64]session.Entry // durable, but one before them is not here yet
	timed bool                     // somebody is going to look for that one
	held  []signed                 // call signs that are about to be had
	seen  map[string]int64         // when a lead was last heard of, ms
}

func (r *room) now() session.State {
	r.mu.Lock()
	defer r.mu.Unlock()
	return r.state
}

func (r *room) over() bool {
	r.mu.Lock()
	defer r.mu.Unlock()
	return r.row.EndedMS != 0
}

func (r *room) kept() row {
	r.mu.Lock()
	defer r.mu.Unlock()
	return r.row
}

// read brings the state up to the log as the store holds it.
func (r *room) read() error {
	for {
		lines, err := r.classes.Store.Lines(r.id, r.state.Seq, page)
		if err != nil || len(lines) == 0 {
			return err
		}
		for _, line := range lines {
			e, err := entryOf(line)
			if err != nil {
				return err
			}
			r.state = session.Settle(r.state, e)
		}
	}
}

// entryOf reads a line. Its place is the store's to say.
func entryOf(line quiz.Line) (session.Entry, error) {
	var e session.Entry
	err := json.Unmarshal(line.Body, &e)
	e.Seq = line.Seq
	return e, err
}

// spell writes an entry as a line's body.
func spell(e session.Entry) quiz.Raw {
	e.Seq = 0
	body, err := json.Marshal(e)
	if err != nil {
		panic("class: " + err.Error()) // words and finite numbers only
	}
	return body
}

// settle takes durable entries into the state, in the order of the log, and tells
// who is to be told. Entries whose turn has not come wait: whoever made the ones
// before them durable is about to bring them.
func (r *room) settle(entries ...session.Entry) {
	r.mu.Lock()
	for _, e := range entries {
		if e.Seq > r.state.Seq {
			r.early[e.Seq] = e
		}
	}
	var devices []string
	moved := false
	for {
		e, ok := r.early[r.state.Seq+1]
		if !ok {
			break
		}
		delete(r.early, e.Seq)
		devices = append(devices, leftBy(&r.state, e)...)
		r.state = session.Settle(r.state, e)
		devices, moved = append(devices, deviceOf(&r.state, e)...), true
	}
	if len(r.early) > 0 && !r.timed {
		r.timed = true
		time.AfterFunc(patience, r.catchUp)
	}
	r.mu.Unlock()
	if moved {
		r.classes.changed(r.id, devices, false)
	}
}

// patience is how long an entry may wait for the one before it (chosen by us).
const patience = time.Second

// catchUp reads from the store what nobody brought.
func (r *room) catchUp() {
	r.mu.Lock()
	after, behind := r.state.Seq, len(r.early) > 0
	r.timed = false
	r.mu.Unlock()
	if !behind {
		return
	}
	lines, err := r.classes.Store.Lines(r.id, after, page)
	if err != nil {
		r.classes.Log.Error("log of a class not read", "class", r.id, "err", err)
		return
	}
	var entries []session.Entry
	for _, line := range lines {
		e, err := entryOf(line)
		if err != nil {
			r.classes.Log.Error("entry of a class not read", "class", r.id, "seq", line.Seq, "err", err)
			return
		}
		entries = append(entries, e)
	}
	r.settle(entries...)
}

// deviceOf is whose own part an entry changes.
func deviceOf(s *session.State, e session.Entry) []string {
	if e.Member != nil {
		return []string{e.Member.Device}
	}
	if e.Person >= 1 && e.Person <= len(s.People) {
		return []string{s.People[e.Person-1].Device}
	}
	return nil
}

// leftBy is the phone that somebody is about to move from.
func leftBy(s *session.State, e session.Entry) []string {
	if e.Kind == session.Moved && e.Person >= 1 && e.Person <= len(s.People) {
		return []string{s.People[e.Person-1].Device}
	}
	return nil
}

// enter makes entries durable and settles them.
func (r *room) enter(deed quiz.Deed, entries ...session.Entry) (last uint64, err error) {
	bodies := make([]quiz.Raw, len(entries))
	for i := range entries {
		entries[i].V, entries[i].AtMS = session.Version, r.classes.Now().UnixMilli()
		bodies[i] = spell(entries[i])
	}
	first, err := r.classes.Store.AddLines(deed, r.id, bodies...)
	if err != nil {
		return 0, err
	}
	for i := range entries {
		entries[i].Seq = first + uint64(i)
	}
	r.settle(entries...)
	return first + uint64(len(entries)) - 1, nil
}

// allowed asks the class as it stands whether it would take an entry.
func (r *room) allowed(e session.Entry) error {
	s := r.now()
	e.V, e.Seq, e.AtMS = session.Version, s.Seq+1, r.classes.Now().UnixMilli()
	if _, err := session.Apply(s, e); err != nil {
		return &Refused{Why: err}
	}
	return nil
}

// change saves the row after change has been made to it, with its deed.
func (r *room) change(deed quiz.Deed, change func(*row)) error {
	r.mu.Lock()
	defer r.mu.Unlock()
	next := r.row
	change(&next)
	body, err := json.Marshal(next)
	if err != nil {
		return err
	}
	doc := quiz.Doc{Kind: quiz.ClassDoc, ID: r.id, Rev: r.rev, Body: body}
	if err := r.classes.Store.Save(deed, doc); err != nil {
		return err
	}
	r.row, r.rev = next, r.rev+1
	return nil
}
