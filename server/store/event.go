package store

import (
	"bytes"
	"encoding/binary"
	"encoding/json"

	bolt "go.etcd.io/bbolt"

	"lintel/quiz"
)

// Append adds events to one device's history, all or none.
func (s *Store) Append(device string, events []quiz.Event) (uint64, error) {
	key, err := idKey(device)
	if err != nil {
		return 0, quiz.ErrUnknownDevice
	}
	received := s.now().UnixMilli()
	var acked uint64
	err = s.writer.do(func(tx *bolt.Tx) error {
		if tx.Bucket(deviceBucket).Get(key) == nil {
			return quiz.ErrUnknownDevice
		}
		acked = lastSeq(tx, key)
		fresh, err := sift(tx, key, acked, events)
		if err != nil {
			return err
		}
		for i := range fresh {
			if err := add(tx, key, eventRow{Event: fresh[i], ReceivedMS: received}); err != nil {
				return err
			}
			acked = fresh[i].Seq
		}
		return nil
	})
	if err != nil && !isRefusal(err) {
		return 0, err
	}
	return acked, err
}

// sift returns the events that are not held yet, or says why the batch cannot
// follow what is held.
func sift(tx *bolt.Tx, device []byte, acked uint64, events []quiz.Event) ([]quiz.Event, error) {
	if len(events) > 0 && events[0].Seq > acked+1 {
		return nil, quiz.ErrGap
	}
	ids := tx.Bucket(idBucket)
	seen := map[string]bool{}
	for i, e := range events {
		id, err := idKey(e.ID)
		if err != nil {
			return nil, err
		}
		if i > 0 && e.Seq != events[i-1].Seq+1 {
			return nil, quiz.ErrGap
		}
		at := ids.Get(append(bytes.Clone(device), id...))
		held := at != nil && binary.BigEndian.Uint64(at) == e.Seq
		fresh := at == nil && e.Seq > acked
		if !held && !fresh || seen[e.ID] {
			return nil, quiz.ErrForked
		}
		seen[e.ID] = true
	}
	held := min(int(acked+1-min(acked+1, firstSeq(events))), len(events))
	return events[held:], nil
}

func firstSeq(events []quiz.Event) uint64 {
	if len(events) == 0 {
		return 1
	}
	return events[0].Seq
}

// add writes one event, its id and, for an answer, its place in the queue of
// those to be checked.
func add(tx *bolt.Tx, device []byte, row eventRow) error {
	id, err := idKey(row.ID)
	if err != nil {
		return err
	}
	key := eventKey(device, row.Seq)
	if err := put(tx.Bucket(eventBucket), key, row); err != nil {
		return err
	}
	if row.Kind == quiz.AnswerEvent {
		if err := tx.Bucket(waitingBucket).Put(key, present); err != nil {
			return err
		}
	}
	return tx.Bucket(idBucket).Put(append(bytes.Clone(device), id...), binary.BigEndian.AppendUint64(nil, row.Seq))
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

// Records returns a device's events in order, each answer with its check.
func (s *Store) Records(device string, after uint64, limit int) ([]quiz.Record, error) {
	var records []quiz.Record
	err := s.viewDevice(device, func(tx *bolt.Tx, device []byte) error {
		cursor := tx.Bucket(eventBucket).Cursor()
		key, text := cursor.Seek(eventKey(device, after+1))
		for ; bytes.HasPrefix(key, device) && len(records) < limit; key, text = cursor.Next() {
			record, err := readRecord(tx, key, text)
			if err != nil {
				return err
			}
			records = append(records, record)
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
