package store

import (
	"bytes"
	"encoding/binary"
	"encoding/json"

	"lintel/quiz"
)

func (w *walker) docs() {
	for _, kind := range quiz.DocKinds {
		_ = w.tx.Bucket([]byte(kind)).ForEach(func(id, text []byte) error {
			w.census.Docs++
			if kind == quiz.ClassDoc {
				w.census.Classes++
			}
			if doc, err := readDoc(kind, id, text); err != nil || doc.Rev == 0 {
				w.fault("%s %s: is not readable", kind, id)
			}
			return nil
		})
	}
}

func (w *walker) lines() {
	var class []byte
	next := uint64(1)
	_ = w.tx.Bucket(lineBucket).ForEach(func(key, text []byte) error {
		w.census.Lines++
		name, seq, ok := splitKey(key)
		if !ok {
			w.fault("line %x: is not a key", key)
			return nil
		}
		if !bytes.Equal(class, key[:idLen]) {
			class, next = bytes.Clone(key[:idLen]), 1
			if docsOf(w.tx, quiz.ClassDoc).get(name) == nil {
				w.fault("class %s: has a log and is not there", name)
			}
		}
		if seq != next {
			w.fault("class %s: line %d follows %d", name, seq, next-1)
		}
		next = seq + 1
		if !json.Valid(text) {
			w.fault("class %s: line %d is not readable", name, seq)
		}
		return nil
	})
}

func (w *walker) deeds() {
	bucket := w.tx.Bucket(deedBucket)
	_ = bucket.ForEach(func(key, text []byte) error {
		w.census.Deeds++
		var deed quiz.Deed
		if err := json.Unmarshal(text, &deed); err != nil || len(key) != seqLen || binary.BigEndian.Uint64(key) != deed.Seq || deed.Seq != w.census.Deeds {
			w.fault("deed %x: is not readable", key)
		}
		return nil
	})
	if bucket.Sequence() != w.census.Deeds {
		w.fault("deeds: counted %d, the store says %d", w.census.Deeds, bucket.Sequence())
	}
}
