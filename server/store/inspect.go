package store

import (
	"encoding/binary"
	"errors"
	"io/fs"
	"os"
	"strconv"
	"time"

	bolt "go.etcd.io/bbolt"
	bolterrors "go.etcd.io/bbolt/errors"

	"lintel/engine"
)

// inspect opens a file to read only and says whether it is a store that this
// program may write.
func inspect(path string, wait time.Duration) error {
	db, err := openToRead(path, wait)
	if err != nil {
		return err
	}
	return db.Close()
}

func openToRead(path string, wait time.Duration) (*bolt.DB, error) {
	// bbolt takes an empty file for a new store and would write to it.
	if info, err := os.Stat(path); err == nil && info.Size() == 0 {
		return nil, notOurs(path)
	}
	db, err := bolt.Open(path, 0o600, &bolt.Options{ReadOnly: true, Timeout: wait})
	if err != nil {
		return nil, openProblem(path, err)
	}
	err = unfaulted(func() error {
		return db.View(func(tx *bolt.Tx) error { return firstOf(path, tx, checkLength, checkLayout) })
	})
	var torn *tornError
	if errors.As(err, &torn) {
		err = engine.Bad(path, "is torn ("+torn.Error()+")", "restore a whole backup; the file was not touched")
	}
	if err != nil {
		return nil, errors.Join(err, db.Close())
	}
	return db, nil
}

func firstOf(path string, tx *bolt.Tx, checks ...func(string, *bolt.Tx) error) error {
	for _, check := range checks {
		if err := check(path, tx); err != nil {
			return err
		}
	}
	return nil
}

// checkLength refuses a file that ends before its own pages do. bbolt maps the
// file into memory, and touching a page past its end would kill the process.
func checkLength(path string, tx *bolt.Tx) error {
	info, err := os.Stat(path)
	if err != nil {
		return openProblem(path, err)
	}
	if info.Size() < tx.Size() {
		return engine.Bad(path, "is cut short ("+strconv.FormatInt(info.Size(), 10)+" of "+strconv.FormatInt(tx.Size(), 10)+" bytes)",
			"restore a whole backup; the file was not touched")
	}
	return nil
}

func checkLayout(path string, tx *bolt.Tx) error {
	meta := tx.Bucket(metaBucket)
	if meta == nil || string(meta.Get(appKey)) != appName {
		return notOurs(path)
	}
	schema := schemaOf(tx)
	if schema == 0 {
		return notOurs(path)
	}
	if schema > Schema {
		return engine.Bad(path, "was written by a newer Lintel (schema "+strconv.FormatUint(schema, 10)+", this one reads up to "+strconv.Itoa(Schema)+")",
			"run that version, or restore a backup made by this one; the file was not touched")
	}
	for _, buckets := range bySchema[:schema+1] {
		for _, name := range buckets {
			if tx.Bucket(name) == nil {
				return notOurs(path)
			}
		}
	}
	return nil
}

// schemaOf is the version of a file's layout, 0 when it has none.
func schemaOf(tx *bolt.Tx) uint64 {
	text := tx.Bucket(metaBucket).Get(schemaKey)
	if len(text) != seqLen {
		return 0
	}
	return binary.BigEndian.Uint64(text)
}

func notOurs(path string) error {
	return engine.Bad(path, "is not a Lintel store", "choose another data folder with -data; the file was not touched")
}

func openProblem(path string, err error) error {
	switch {
	case errors.Is(err, bolterrors.ErrTimeout):
		return engine.Bad(path, "is in use by another Lintel", "stop that one first, or choose another data folder with -data")
	case errors.Is(err, fs.ErrPermission):
		return engine.Bad(path, "cannot be opened by this user", "give the user that runs Lintel the right to read and write it")
	case errors.Is(err, fs.ErrNotExist):
		return engine.Bad(path, "does not exist", "name the folder that holds "+FileName)
	case errors.Is(err, bolterrors.ErrInvalid), errors.Is(err, bolterrors.ErrVersionMismatch), errors.Is(err, bolterrors.ErrChecksum):
		return notOurs(path)
	}
	return engine.Bad(path, "cannot be opened as a store ("+err.Error()+")", "choose another data folder with -data, or restore a backup; the file was not touched")
}

func folderProblem(path string, err error) error {
	if noRoom(err) {
		return engine.Bad(path, "cannot be made, the disk is full", "make room or choose another data folder with -data")
	}
	return engine.Bad(path, "cannot be made ("+err.Error()+")", "choose a data folder that this user may write with -data")
}
