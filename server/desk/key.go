package desk

import (
	"crypto/sha256"
	"encoding/hex"
	"time"

	"lintel/quiz"
)

// keyKind is what a key opens.
type keyKind string

const (
	sessionKey keyKind = "session" // an instructor's sign-in
	browserKey keyKind = "browser" // a browser in which an instructor has signed in before
	inviteKey  keyKind = "invite"  // a new instructor, with Role
	resetKey   keyKind = "reset"   // a new pass phrase
	claimKey   keyKind = "claim"   // a seat of a roster
)

// How long keys last, all chosen by us: a training day, a year, a day, a day, and
// the time it takes to hand out printed codes.
var lifetimes = map[keyKind]time.Duration{
	sessionKey: 14 * time.Hour, browserKey: 365 * 24 * time.Hour,
	inviteKey: 24 * time.Hour, resetKey: 24 * time.Hour, claimKey: 30 * 24 * time.Hour,
}

// key is a secret as kept, under its digest. The secret is random, so a plain
// digest cannot be guessed backwards.
type key struct {
	Kind    keyKind             `json:"kind"`
	Of      string              `json:"of"`           // an instructor's, or a roster's id
	By      string              `json:"by,omitempty"` // the chief whose invitation it is
	Seat    string              `json:"seat,omitempty"`
	Role    quiz.InstructorRole `json:"role,omitempty"`
	UntilMS int64               `json:"until_ms"`
}

func (d *Desk) keys() table[key] { return table[key]{d.store, quiz.KeyDoc} }

func digest(secret string) string {
	sum := sha256.Sum256([]byte(secret))
	return hex.EncodeToString(sum[:])
}

// cut makes a key and the doc that keeps it.
func (d *Desk) cut(k key, secret string) (quiz.Doc, int64, error) {
	k.UntilMS = d.now().Add(lifetimes[k.Kind]).UnixMilli()
	doc, err := d.keys().doc(held[key]{id: digest(secret), value: k})
	return doc, k.UntilMS, err
}

// find returns the key of a secret while it lasts.
func (d *Desk) find(kind keyKind, secret string) (held[key], error) {
	row, err := d.keys().get(digest(secret))
	if err != nil {
		return row, err
	}
	if row.value.Kind != kind || d.now().UnixMilli() > row.value.UntilMS {
		return row, quiz.ErrNoDoc
	}
	return row, nil
}

// spent lists the docs of keys that fit, to be taken away with a change.
func (d *Desk) spent(fits func(id string, k *key) bool) (docs []quiz.Doc, err error) {
	err = d.keys().each(func(row held[key]) error {
		if fits(row.id, &row.value) {
			docs = append(docs, d.keys().gone(row))
		}
		return nil
	})
	return docs, err
}

// Sweep takes away keys that have run out. Called at the start.
func (d *Desk) Sweep() error {
	now := d.now().UnixMilli()
	docs, err := d.spent(func(_ string, k *key) bool { return now > k.UntilMS })
	if err != nil || len(docs) == 0 {
		return err
	}
	return d.store.Save(quiz.Deed{}, docs...)
}
