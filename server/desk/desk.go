// Package desk is what instructors keep apart from their classes: themselves,
// their sign-ins, rosters and sets. It works on the store's docs, each change
// with its deed in one commit, and knows nothing of HTTP.
package desk

import (
	"crypto/rand"
	"encoding/hex"
	"encoding/json"
	"errors"
	"sync"
	"time"

	"lintel/quiz"
)

// Desk is the instructors' side of a server. Make one with New.
type Desk struct {
	store quiz.Store
	now   func() time.Time
	cost  Cost
	tries *tries
	lanes lanes

	ranks sync.Mutex // held while roles change: of two chiefs who demote each other one stays

	mu    sync.Mutex
	setUp string // the set-up code of this start, empty once used
	moves map[string]move
}

// New returns the desk of a store.
func New(store quiz.Store, now func() time.Time, cost Cost) *Desk {
	return &Desk{store: store, now: now, cost: cost, tries: newTries(now), lanes: newLanes(), moves: map[string]move{}}
}

// The errors of a desk besides those of its store and engine.Problem.
var (
	ErrNobody    = errors.New("nobody is signed in here: sign in as an instructor")
	ErrNotChief  = errors.New("this is for a chief: ask one")
	ErrWrong     = errors.New("call sign and pass phrase do not match: try again, or ask the keeper of the server for a code")
	ErrWrongCode = errors.New("this code is wrong, used up or too old: ask for another")
	ErrSlowDown  = errors.New("too many tries: wait a minute, or use a code from the keeper of the server")
	ErrHashing   = errors.New("the server is checking as many pass phrases as it can: try again in a moment")
	ErrTaken     = errors.New("this call sign is taken: choose another")
	ErrLastChief = errors.New("this is the last chief: make another chief first")
	ErrHasChief  = errors.New("this server is set up already: sign in, or ask a chief for an invitation")
)

// table is the docs of one kind as one type.
type table[T any] struct {
	store quiz.Desk
	kind  quiz.DocKind
}

// held is a doc as read, with the rev that a change must name.
type held[T any] struct {
	id    string
	rev   uint64
	value T
}

func (t table[T]) get(id string) (held[T], error) {
	doc, err := t.store.Doc(t.kind, id)
	if err != nil {
		return held[T]{}, err
	}
	return t.read(doc)
}

func (t table[T]) read(doc quiz.Doc) (held[T], error) {
	row := held[T]{id: doc.ID, rev: doc.Rev}
	return row, json.Unmarshal(doc.Body, &row.value)
}

// page is how many docs are read at a time (chosen by us).
const page = 200

// each visits every doc of the kind in order of id.
func (t table[T]) each(visit func(held[T]) error) error {
	for after := ""; ; {
		docs, err := t.store.Docs(t.kind, after, page)
		if err != nil || len(docs) == 0 {
			return err
		}
		for _, doc := range docs {
			row, err := t.read(doc)
			if err != nil {
				return err
			}
			if err := visit(row); err != nil {
				return err
			}
		}
		after = docs[len(docs)-1].ID
	}
}

// doc is a row made ready to be saved.
func (t table[T]) doc(row held[T]) (quiz.Doc, error) {
	body, err := json.Marshal(row.value)
	return quiz.Doc{Kind: t.kind, ID: row.id, Rev: row.rev, Body: body}, err
}

// gone is a row to be taken away.
func (t table[T]) gone(row held[T]) quiz.Doc {
	return quiz.Doc{Kind: t.kind, ID: row.id, Rev: row.rev}
}

// save stores one row with its deed.
func (t table[T]) save(deed quiz.Deed, row held[T], more ...quiz.Doc) error {
	doc, err := t.doc(row)
	if err != nil {
		return err
	}
	return t.store.Save(deed, append(more, doc)...)
}

// errDone ends a visit early.
var errDone = errors.New("desk: found")

// Secret is so many random bytes, spelled as hex.
func Secret(bytes int) string {
	random := make([]byte, bytes)
	_, _ = rand.Read(random) // never fails since Go 1.24
	return hex.EncodeToString(random)
}

// newID names a doc.
func newID() string { return Secret(16) }
