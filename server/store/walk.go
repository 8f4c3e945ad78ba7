package store

import (
	"bytes"
	"encoding/binary"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"

	bolt "go.etcd.io/bbolt"

	"lintel/quiz"
)

// Census counts what a walk through the store met.
type Census struct {
	Devices uint64 `json:"devices"`
	Events  uint64 `json:"events"`
	Answers uint64 `json:"answers"`
	Checked uint64 `json:"checked"`
	Waiting uint64 `json:"waiting"`
	Docs    uint64 `json:"docs"`
	Classes uint64 `json:"classes"` // of the docs
	Lines   uint64 `json:"lines"`   // in the logs of classes
	Deeds   uint64 `json:"deeds"`
}

// maxFaults ends a walk through a store that is badly torn (chosen by us).
const maxFaults = 20

// Check walks the whole store: bbolt's own pages, then that every device's
// events are numbered without a gap, that events and ids name each other, that
// every answer is either checked or waiting, that docs and deeds are readable and
// that every line belongs to a class and is numbered without a gap. Writers wait meanwhile, as
// bbolt's page check may not run beside one. The error joins what is wrong.
func (s *Store) Check() (census Census, err error) {
	failed := s.writer.do(func(tx *bolt.Tx) error {
		census, err = walk(tx)
		return nil
	})
	return census, errors.Join(failed, err)
}

// CheckFile walks the store at path without the right to write to it.
func CheckFile(path string) (census Census, err error) {
	db, err := openToRead(path, DefaultLockWait)
	if err != nil {
		return Census{}, err
	}
	failed := db.View(func(tx *bolt.Tx) error {
		census, err = walk(tx)
		return nil
	})
	return census, errors.Join(failed, err, db.Close())
}

type walker struct {
	tx     *bolt.Tx
	census Census
	faults []error
}

// walk is a walk through a store whose pages may be torn.
func walk(tx *bolt.Tx) (census Census, err error) {
	failed := unfaulted(func() error { census, err = walkOn(tx); return nil })
	return census, errors.Join(failed, err)
}

func walkOn(tx *bolt.Tx) (census Census, err error) {
	w := &walker{tx: tx}
	for err := range tx.Check() {
		w.fault("page: %v", err)
	}
	if len(w.faults) > 0 {
		// Torn pages make every further step a guess.
		return w.census, errors.Join(w.faults...)
	}
	w.devices()
	w.events()
	w.count(idBucket, w.census.Events, "ids", "events")
	w.count(checkBucket, w.census.Checked, "checks", "checked answers")
	w.count(waitingBucket, w.census.Waiting, "waiting", "answers without a check")
	if schemaOf(tx) >= 2 {
		w.docs()
		w.lines()
		w.deeds()
	}
	return w.census, errors.Join(w.faults...)
}

func (w *walker) fault(format string, args ...any) {
	if len(w.faults) < maxFaults {
		w.faults = append(w.faults, fmt.Errorf("store: "+format, args...))
	}
}

func (w *walker) devices() {
	bucket := w.tx.Bucket(deviceBucket)
	_ = bucket.ForEach(func(key, text []byte) error {
		w.census.Devices++
		var row deviceRow
		if err := json.Unmarshal(text, &row); err != nil || len(key) != idLen || len(row.Secret) != 64 {
			w.fault("device %x: is not readable", key)
		}
		return nil
	})
	if bucket.Sequence() != w.census.Devices {
		w.fault("devices: counted %d, the store says %d", w.census.Devices, bucket.Sequence())
	}
}

func (w *walker) events() {
	var device []byte
	next := uint64(1)
	_ = w.tx.Bucket(eventBucket).ForEach(func(key, text []byte) error {
		name, seq, ok := splitKey(key)
		if !ok {
			w.fault("event %x: is not a key", key)
			return nil
		}
		if !bytes.Equal(device, key[:idLen]) {
			device, next = bytes.Clone(key[:idLen]), 1
			if w.tx.Bucket(deviceBucket).Get(device) == nil {
				w.fault("device %s: has events and is not registered", name)
			}
		}
		if seq != next {
			w.fault("device %s: event %d follows %d", name, seq, next-1)
		}
		next = seq + 1
		w.event(key, text, name, seq)
		return nil
	})
}

func (w *walker) event(key, text []byte, device string, seq uint64) {
	w.census.Events++
	var row eventRow
	if err := json.Unmarshal(text, &row); err != nil || row.Device != device || row.Seq != seq {
		w.fault("device %s: event %d is not readable", device, seq)
		return
	}
	id, err := hex.DecodeString(row.ID)
	at := w.tx.Bucket(idBucket).Get(append(bytes.Clone(key[:idLen]), id...))
	if err != nil || len(at) != seqLen || binary.BigEndian.Uint64(at) != seq {
		w.fault("device %s: event %d is not found by its id", device, seq)
	}
	if row.Kind == quiz.AnswerEvent {
		w.answer(key, device, seq)
	}
}

func (w *walker) answer(key []byte, device string, seq uint64) {
	w.census.Answers++
	text := w.tx.Bucket(checkBucket).Get(key)
	waiting := w.tx.Bucket(waitingBucket).Get(key) != nil
	if waiting == (text != nil) {
		w.fault("device %s: answer %d must be either checked or waiting", device, seq)
	}
	if waiting {
		w.census.Waiting++
	}
	if text == nil {
		return
	}
	w.census.Checked++
	var check quiz.Check
	if json.Unmarshal(text, &check) != nil {
		w.fault("device %s: the check of answer %d is not readable", device, seq)
	}
}

func (w *walker) count(name []byte, want uint64, what, against string) {
	var n uint64
	_ = w.tx.Bucket(name).ForEach(func(_, _ []byte) error { n++; return nil })
	if n != want {
		w.fault("%s: holds %d rows for %d %s", what, n, want, against)
	}
}
