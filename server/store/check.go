package store

import (
	"encoding/json"

	bolt "go.etcd.io/bbolt"

	"lintel/quiz"
)

// Waiting returns answers that no one has checked.
func (s *Store) Waiting(limit int) ([]quiz.Event, error) {
	var events []quiz.Event
	err := s.db.View(func(tx *bolt.Tx) error {
		cursor := tx.Bucket(waitingBucket).Cursor()
		for key, _ := cursor.First(); key != nil && len(events) < limit; key, _ = cursor.Next() {
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
