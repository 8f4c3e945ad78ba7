package store

import (
	"bytes"
	"encoding/binary"
	"encoding/json"

	bolt "go.etcd.io/bbolt"

	"lintel/quiz"
)

// docBuckets are one bucket a kind of doc: id -> rev (8), body.
func docBuckets() [][]byte {
	var names [][]byte
	for _, kind := range quiz.DocKinds {
		names = append(names, []byte(kind))
	}
	return names
}

// Doc returns one doc.
func (s *Store) Doc(kind quiz.DocKind, id string) (doc quiz.Doc, err error) {
	err = s.db.View(func(tx *bolt.Tx) error {
		text := docsOf(tx, kind).get(id)
		if text == nil {
			return quiz.ErrNoDoc
		}
		doc, err = readDoc(kind, []byte(id), text)
		return err
	})
	return doc, err
}

// Docs returns docs of a kind in order of id.
func (s *Store) Docs(kind quiz.DocKind, after string, limit int) ([]quiz.Doc, error) {
	var docs []quiz.Doc
	err := s.db.View(func(tx *bolt.Tx) error {
		return docsOf(tx, kind).after(after, func(id, text []byte) (bool, error) {
			doc, err := readDoc(kind, id, text)
			docs = append(docs, doc)
			return len(docs) < limit, err
		})
	})
	return docs, err
}

// Save stores docs, all or none.
func (s *Store) Save(deed quiz.Deed, docs ...quiz.Doc) error {
	return s.writer.do(func(tx *bolt.Tx) error { return s.save(tx, deed, docs) })
}

// save first looks whether all may be stored: a refusal has written nothing.
func (s *Store) save(tx *bolt.Tx, deed quiz.Deed, docs []quiz.Doc) error {
	for _, doc := range docs {
		if err := mayStore(tx, doc); err != nil {
			return err
		}
	}
	for _, doc := range docs {
		bucket := tx.Bucket([]byte(doc.Kind))
		if err := shed(tx, doc); err != nil {
			return err
		}
		if len(doc.Body) == 0 {
			if err := bucket.Delete([]byte(doc.ID)); err != nil {
				return err
			}
			continue
		}
		row := append(binary.BigEndian.AppendUint64(nil, doc.Rev+1), doc.Body...)
		if err := bucket.Put([]byte(doc.ID), row); err != nil {
			return err
		}
	}
	return s.note(tx, deed)
}

// shed has the bytes of what a doc was leave the file when it is compacted next, where
// that is asked for, and where a roster is taken away, as it names people.
func shed(tx *bolt.Tx, doc quiz.Doc) error {
	if !doc.Sheds && (len(doc.Body) != 0 || doc.Kind != quiz.RosterDoc) {
		return nil
	}
	return tx.Bucket(metaBucket).Put(erasedKey, present)
}

func mayStore(tx *bolt.Tx, doc quiz.Doc) error {
	held := docsOf(tx, doc.Kind).get(doc.ID)
	rev := uint64(0)
	if len(held) >= seqLen {
		rev = binary.BigEndian.Uint64(held)
	}
	switch {
	case doc.Rev != 0 && held == nil, len(doc.Body) == 0 && held == nil:
		return quiz.ErrNoDoc
	case doc.Rev != rev:
		return quiz.ErrStale
	}
	return nil
}

// note adds a deed to the record of who did what.
func (s *Store) note(tx *bolt.Tx, deed quiz.Deed) error {
	if deed.Did == "" {
		return nil
	}
	bucket := tx.Bucket(deedBucket)
	seq, err := bucket.NextSequence()
	if err != nil {
		return err
	}
	deed.Seq, deed.AtMS = seq, s.now().UnixMilli()
	return put(bucket, binary.BigEndian.AppendUint64(nil, seq), deed)
}

// Deeds returns deeds, newest first.
func (s *Store) Deeds(before uint64, limit int) ([]quiz.Deed, error) {
	var deeds []quiz.Deed
	err := s.db.View(func(tx *bolt.Tx) error {
		bucket := tx.Bucket(deedBucket)
		if bucket == nil {
			return nil
		}
		cursor := bucket.Cursor()
		key, text := cursor.Last()
		if before > 0 {
			if found, _ := cursor.Seek(binary.BigEndian.AppendUint64(nil, before)); found != nil {
				key, text = cursor.Prev()
			} else {
				key, text = cursor.Last()
			}
		}
		for ; key != nil && len(deeds) < limit; key, text = cursor.Prev() {
			var deed quiz.Deed
			if err := json.Unmarshal(text, &deed); err != nil {
				return err
			}
			deeds = append(deeds, deed)
		}
		return nil
	})
	return deeds, err
}

func readDoc(kind quiz.DocKind, id, text []byte) (quiz.Doc, error) {
	if len(text) < seqLen || !json.Valid(text[seqLen:]) {
		return quiz.Doc{}, errTornDoc
	}
	return quiz.Doc{Kind: kind, ID: string(id), Rev: binary.BigEndian.Uint64(text), Body: bytes.Clone(text[seqLen:])}, nil
}

// shelf is the docs of a kind; a file of the first schema has none.
type shelf struct{ bucket *bolt.Bucket }

func docsOf(tx *bolt.Tx, kind quiz.DocKind) shelf { return shelf{tx.Bucket([]byte(kind))} }

func (s shelf) get(id string) []byte {
	if s.bucket == nil || id == "" {
		return nil
	}
	return s.bucket.Get([]byte(id))
}

// after visits docs after an id until visit wants no more.
func (s shelf) after(id string, visit func(id, text []byte) (more bool, err error)) error {
	if s.bucket == nil {
		return nil
	}
	cursor := s.bucket.Cursor()
	key, text := cursor.Seek([]byte(id))
	if id != "" && string(key) == id {
		key, text = cursor.Next()
	}
	for ; key != nil; key, text = cursor.Next() {
		if more, err := visit(key, text); err != nil || !more {
			return err
		}
	}
	return nil
}
