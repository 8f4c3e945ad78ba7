package store

import (
	"bytes"
	"errors"
	"slices"

	bolt "go.etcd.io/bbolt"

	"lintel/quiz"
)

var errTornDoc = errors.New("store: a doc is not readable: restore a backup")

// AddLines enters lines into a class's log.
func (s *Store) AddLines(deed quiz.Deed, class string, bodies ...quiz.Raw) (first uint64, err error) {
	key, err := idKey(class)
	if err != nil {
		return 0, quiz.ErrNoDoc
	}
	err = s.writer.do(func(tx *bolt.Tx) error {
		if docsOf(tx, quiz.ClassDoc).get(class) == nil {
			return quiz.ErrNoDoc
		}
		first = lastOf(tx, lineBucket, key) + 1
		for i, body := range bodies {
			if err := tx.Bucket(lineBucket).Put(eventKey(key, first+uint64(i)), body); err != nil {
				return err
			}
		}
		return s.note(tx, deed)
	})
	return first, err
}

// enter writes the lines that go with one event.
func enter(tx *bolt.Tx, entered, lines []quiz.Line, event uint64) ([]quiz.Line, error) {
	for _, line := range lines {
		key, err := idKey(line.Class)
		if line.Event != event || err != nil || docsOf(tx, quiz.ClassDoc).get(line.Class) == nil {
			continue
		}
		line.Seq = lastOf(tx, lineBucket, key) + 1
		if err := tx.Bucket(lineBucket).Put(eventKey(key, line.Seq), line.Body); err != nil {
			return nil, err
		}
		entered = append(entered, line)
	}
	return entered, nil
}

// Lines returns a class's log in order.
func (s *Store) Lines(class string, after uint64, limit int) ([]quiz.Line, error) {
	key, err := idKey(class)
	if err != nil {
		return nil, quiz.ErrNoDoc
	}
	var lines []quiz.Line
	err = s.db.View(func(tx *bolt.Tx) error {
		bucket := tx.Bucket(lineBucket)
		if bucket == nil {
			return nil
		}
		cursor := bucket.Cursor()
		at, text := cursor.Seek(eventKey(key, after+1))
		for ; bytes.HasPrefix(at, key) && len(lines) < limit; at, text = cursor.Next() {
			_, seq, _ := splitKey(at)
			lines = append(lines, quiz.Line{Class: class, Seq: seq, Body: bytes.Clone(text)})
		}
		return nil
	})
	return lines, err
}

// Rekey gives a device another secret.
func (s *Store) Rekey(device, secret string) (quiz.Device, error) {
	key, err := idKey(device)
	if err != nil {
		return quiz.Device{}, quiz.ErrUnknownDevice
	}
	var row deviceRow
	err = s.writer.do(func(tx *bolt.Tx) error {
		bucket := tx.Bucket(deviceBucket)
		if row, err = readDevice(bucket.Get(key)); err != nil {
			return err
		}
		row.Secret = digest(secret)
		return put(bucket, key, row)
	})
	return row.device(device), err
}

// Erase takes away a device and all that is its own. The bytes leave the file when
// it is compacted next.
func (s *Store) Erase(device string, lines []quiz.Line, deed quiz.Deed, docs ...quiz.Doc) error {
	key, err := idKey(device)
	if err != nil {
		return quiz.ErrUnknownDevice
	}
	return s.writer.do(func(tx *bolt.Tx) error {
		devices := tx.Bucket(deviceBucket)
		if devices.Get(key) == nil {
			return quiz.ErrUnknownDevice
		}
		if err := s.save(tx, deed, docs); err != nil {
			return err
		}
		if err := tx.Bucket(metaBucket).Put(erasedKey, present); err != nil {
			return err
		}
		for _, name := range [][]byte{eventBucket, idBucket, waitingBucket, checkBucket} {
			if err := clear(tx.Bucket(name), key); err != nil {
				return err
			}
		}
		if err := devices.Delete(key); err != nil {
			return err
		}
		if err := devices.SetSequence(devices.Sequence() - 1); err != nil {
			return err
		}
		return replace(tx, lines)
	})
}

// clear deletes every row of a device.
func clear(bucket *bolt.Bucket, device []byte) error {
	var keys [][]byte
	cursor := bucket.Cursor()
	for key, _ := cursor.Seek(device); bytes.HasPrefix(key, device); key, _ = cursor.Next() {
		keys = append(keys, slices.Clone(key))
	}
	for _, key := range keys {
		if err := bucket.Delete(key); err != nil {
			return err
		}
	}
	return nil
}

// replace puts lines in the place of those that stand there.
func replace(tx *bolt.Tx, lines []quiz.Line) error {
	for _, line := range lines {
		class, err := idKey(line.Class)
		if err != nil {
			return err
		}
		key := eventKey(class, line.Seq)
		if tx.Bucket(lineBucket).Get(key) == nil {
			continue
		}
		if err := tx.Bucket(lineBucket).Put(key, line.Body); err != nil {
			return err
		}
	}
	return nil
}
