package store

import (
	"bytes"
	"encoding/binary"
	"encoding/json"
	"math"
	"slices"

	bolt "go.etcd.io/bbolt"

	"lintel/quiz"
)

// Waiting returns answers that no one has checked, one of each device.
func (s *Store) Waiting(after string, limit int) ([]quiz.Event, error) {
	var from []byte
	if after != "" {
		device, err := idKey(after)
		if err != nil {
			return nil, quiz.ErrUnknownDevice
		}
		from = behind(device)
	}
	var events []quiz.Event
	err := s.db.View(func(tx *bolt.Tx) error {
		keys := oneOfEach(tx.Bucket(waitingBucket).Cursor(), from, limit)
		for _, key := range keys {
			var row eventRow
			if err := json.Unmarshal(tx.Bucket(eventBucket).Get(key), &row); err != nil {
				return err
			}
			events = append(events, row.Event)
		}
		return nil
	})
	return events, err
}

// oneOfEach is the first key of each device, from a place to the end and then from
// the beginning to that place.
func oneOfEach(cursor *bolt.Cursor, from []byte, limit int) [][]byte {
	var keys [][]byte
	walk := func(begin, end []byte) {
		for key, _ := cursor.Seek(begin); key != nil && len(keys) < limit; key, _ = cursor.Seek(behind(key[:idLen])) {
			if end != nil && bytes.Compare(key, end) >= 0 {
				return
			}
			keys = append(keys, key)
		}
	}
	walk(from, nil)
	if from != nil {
		walk(nil, from)
	}
	return keys
}

// behind is a key behind every one of a device's and before the next device's.
func behind(device []byte) []byte {
	return binary.BigEndian.AppendUint64(slices.Clone(device), math.MaxUint64)
}

// SetCheck stores an answer's check and takes it off the waiting list.
func (s *Store) SetCheck(device string, seq uint64, check quiz.Check) error {
	id, err := idKey(device)
	if err != nil {
		return quiz.ErrUnknownDevice
	}
	key := eventKey(id, seq)
	return s.writer.do(func(tx *bolt.Tx) error {
		if tx.Bucket(waitingBucket).Get(key) == nil {
			return nil
		}
		if err := put(tx.Bucket(checkBucket), key, check); err != nil {
			return err
		}
		return tx.Bucket(waitingBucket).Delete(key)
	})
}
