package store

import (
	"bytes"
	"encoding/binary"
	"encoding/json"
	"slices"

	bolt "go.etcd.io/bbolt"

	"lintel/quiz"
)

// entry is an event made ready to be written before the writer's turn comes:
// encoding is most of the work, and the writer is one goroutine.
type entry struct {
	seq    uint64
	id     []byte
	text   []byte
	answer bool
}

func makeReady(events []quiz.Event, receivedMS int64) ([]entry, error) {
	entries := make([]entry, len(events))
	for i, e := range events {
		id, err := idKey(e.ID)
		if err != nil {
			return nil, err
		}
		text, err := encode(eventRow{Event: e, ReceivedMS: receivedMS})
		if err != nil {
			return nil, err
		}
		entries[i] = entry{seq: e.Seq, id: id, text: text, answer: e.Kind == quiz.AnswerEvent}
	}
	return entries, nil
}

// Append adds events to one device's history, all or none.
func (s *Store) Append(device string, events []quiz.Event) (uint64, error) {
	acked, _, err := s.Commit(device, events, nil)
	return acked, err
}

// Commit adds events, all or none, and enters the lines that go with them.
func (s *Store) Commit(device string, events []quiz.Event, lines []quiz.Line) (acked uint64, entered []quiz.Line, err error) {
	key, err := idKey(device)
	if err != nil {
		return 0, nil, quiz.ErrUnknownDevice
	}
	entries, err := makeReady(events, s.now().UnixMilli())
	if err != nil {
		return 0, nil, err
	}
	err = s.writer.do(func(tx *bolt.Tx) error {
		entered = nil // the writer may have to go again
		if tx.Bucket(deviceBucket).Get(key) == nil {
			return quiz.ErrUnknownDevice
		}
		acked = lastSeq(tx, key)
		fresh, err := sift(tx, key, acked, entries)
		if err != nil {
			return err
		}
		for _, e := range fresh {
			if err := add(tx, key, e); err != nil {
				return err
			}
			if entered, err = enter(tx, entered, lines, e.seq); err != nil {
				return err
			}
			acked = e.seq
		}
		return nil
	})
	if err != nil && !isRefusal(err) {
		return 0, nil, err
	}
	return acked, entered, err
}

// sift returns the events that are not held yet, or says why the batch cannot
// follow what is held.
func sift(tx *bolt.Tx, device []byte, acked uint64, events []entry) ([]entry, error) {
	ids := tx.Bucket(idBucket)
	seen := map[string]bool{}
	held := 0
	for i, e := range events {
		if i == 0 && e.seq > acked+1 || i > 0 && e.seq != events[i-1].seq+1 {
			return nil, quiz.ErrGap
		}
		at := ids.Get(slices.Concat(device, e.id))
		old := at != nil && binary.BigEndian.Uint64(at) == e.seq
		fresh := at == nil && e.seq > acked && !seen[string(e.id)]
		if !old && !fresh {
			return nil, quiz.ErrForked
		}
		if old {
			held = i + 1
		}
		seen[string(e.id)] = true
	}
	return events[held:], nil
}

// add writes one event, its id and, for an answer, its place in the queue of
// those to be checked.
func add(tx *bolt.Tx, device []byte, e entry) error {
	key := eventKey(device, e.seq)
	if err := tx.Bucket(eventBucket).Put(key, e.text); err != nil {
		return err
	}
	if e.answer {
		if err := tx.Bucket(waitingBucket).Put(key, present); err != nil {
			return err
		}
	}
	return tx.Bucket(idBucket).Put(slices.Concat(device, e.id), binary.BigEndian.AppendUint64(nil, e.seq))
}

// Acked returns how far a device's history is held.
func (s *Store) Acked(device string) (uint64, error) {
	var acked uint64
	err := s.viewDevice(device, func(tx *bolt.Tx, key []byte) error {
		acked = lastSeq(tx, key)
		return nil
	})
	return acked, err
}

// Records returns a page of a device's events in order, each answer with its check.
func (s *Store) Records(device string, after uint64, limit int) ([]quiz.Record, error) {
	var records []quiz.Record
	size := 0
	err := s.viewDevice(device, func(tx *bolt.Tx, device []byte) error {
		cursor := tx.Bucket(eventBucket).Cursor()
		key, text := cursor.Seek(eventKey(device, after+1))
		for ; bytes.HasPrefix(key, device) && len(records) < limit && size < quiz.PageBytes; key, text = cursor.Next() {
			record, err := readRecord(tx, key, text)
			if err != nil {
				return err
			}
			records, size = append(records, record), size+len(record.Body)
		}
		return nil
	})
	return records, err
}

func readRecord(tx *bolt.Tx, key, text []byte) (quiz.Record, error) {
	var row eventRow
	if err := json.Unmarshal(text, &row); err != nil {
		return quiz.Record{}, err
	}
	record := quiz.Record{Event: row.Event, ReceivedMS: row.ReceivedMS}
	if row.Kind != quiz.AnswerEvent {
		return record, nil
	}
	record.Check = &quiz.Check{V: 1, State: quiz.CheckWaiting}
	if check := tx.Bucket(checkBucket).Get(key); check != nil {
		return record, json.Unmarshal(check, record.Check)
	}
	return record, nil
}

// viewDevice reads with the key of a device that exists.
func (s *Store) viewDevice(device string, read func(*bolt.Tx, []byte) error) error {
	key, err := idKey(device)
	if err != nil {
		return quiz.ErrUnknownDevice
	}
	return s.db.View(func(tx *bolt.Tx) error {
		if tx.Bucket(deviceBucket).Get(key) == nil {
			return quiz.ErrUnknownDevice
		}
		return read(tx, key)
	})
}
