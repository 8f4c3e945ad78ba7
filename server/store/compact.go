package store

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"

	bolt "go.etcd.io/bbolt"

	"lintel/engine"
)

// What bbolt deletes it only forgets: the bytes stay in pages that are free until
// something else is written there. So after somebody had their history erased the
// file is written anew with what still counts, and takes the old one's place.

// erasedKey stands in meta while the file may hold bytes of what was erased.
var erasedKey = []byte("erased")

// halfCompact is how a file is named that is being written.
const halfCompact = ".compact-*"

// compactStep is how many bytes go into one transaction (chosen by us).
const compactStep = 4 << 20

// CompactErased compacts the store at path when something was erased from it since
// that was last done, and says whether it did. No server may hold the store.
func CompactErased(path string) (done bool, err error) {
	db, err := openToRead(path, DefaultLockWait)
	if err != nil {
		return false, err
	}
	err = db.View(func(tx *bolt.Tx) error {
		done = tx.Bucket(metaBucket).Get(erasedKey) != nil
		return nil
	})
	if err = errors.Join(err, db.Close()); err != nil || !done {
		return false, err
	}
	_, _, err = Compact(path)
	return err == nil, err
}

// Compact writes the store at path anew, without free pages, and returns its size
// before and after. No server may hold it. The new file is written beside it, walked
// through and made durable, and only then takes the name, in one step: whatever
// happens there is one whole store.
func Compact(path string) (before, after int64, err error) {
	if err := inspect(path, DefaultLockWait); err != nil {
		return 0, 0, err
	}
	db, err := openAlone(path, bolt.Options{Timeout: DefaultLockWait})
	if err != nil {
		return 0, 0, openProblem(path, err)
	}
	// The lock is held until the new file has the name, so that nobody writes to
	// the old one meanwhile.
	defer func() { err = errors.Join(err, db.Close()) }()
	before, err = roomFor(path)
	if err != nil {
		return before, 0, err
	}
	temp, err := os.CreateTemp(filepath.Dir(path), halfCompact)
	if err != nil {
		return before, 0, compactProblem(path, err)
	}
	defer os.Remove(temp.Name())
	if err := errors.Join(temp.Close(), writeCompact(temp.Name(), db)); err != nil {
		return before, 0, compactProblem(path, err)
	}
	info, err := os.Stat(temp.Name())
	if err != nil {
		return before, 0, compactProblem(path, err)
	}
	if err := os.Rename(temp.Name(), path); err != nil {
		return before, 0, compactProblem(path, err)
	}
	return before, info.Size(), syncFolder(filepath.Dir(path))
}

// roomFor returns the size of the store once the disk is seen to have as much
// again. What an earlier try left behind when it was killed is cleared away first.
func roomFor(path string) (size int64, err error) {
	folder := filepath.Dir(path)
	halves, err := filepath.Glob(filepath.Join(folder, halfCompact))
	if err != nil {
		return 0, compactProblem(path, err)
	}
	for _, half := range halves {
		if err := os.Remove(half); err != nil {
			return 0, compactProblem(path, err)
		}
	}
	info, err := os.Stat(path)
	if err != nil {
		return 0, compactProblem(path, err)
	}
	if free, known := freeBytes(folder); known && free < uint64(info.Size()) {
		return info.Size(), noRoomToCompact(path, info.Size(), free)
	}
	return info.Size(), nil
}

// writeCompact copies what counts into a new file and compares the two.
func writeCompact(into string, from *bolt.DB) error {
	db, err := bolt.Open(into, 0o600, &bolt.Options{NoSync: true})
	if err != nil {
		return err
	}
	err = bolt.Compact(db, from, compactStep)
	if err == nil {
		err = db.Update(func(tx *bolt.Tx) error { return tx.Bucket(metaBucket).Delete(erasedKey) })
	}
	if err = errors.Join(err, db.Sync(), db.Close()); err != nil {
		return err
	}
	var held Census
	err = from.View(func(tx *bolt.Tx) (err error) {
		held, err = walk(tx)
		return err
	})
	if err != nil {
		return err
	}
	copied, err := CheckFile(into)
	if err == nil && copied != held {
		err = fmt.Errorf("the copy holds %+v of %+v", copied, held)
	}
	return err
}

// openAlone opens a store to write, and makes sure that the file is still the one
// of that name: while it waited for the lock another may have taken its place.
func openAlone(path string, opts bolt.Options) (*bolt.DB, error) {
	var file *os.File
	opts.OpenFile = func(name string, flag int, mode os.FileMode) (*os.File, error) {
		opened, err := os.OpenFile(name, flag, mode) //nolint:gosec // the store's own path
		file = opened
		return opened, err
	}
	db, err := bolt.Open(path, 0o600, &opts)
	if err != nil {
		return nil, err
	}
	held, err := file.Stat()
	if err != nil {
		return nil, errors.Join(err, db.Close())
	}
	named, err := os.Stat(path)
	if err != nil {
		return nil, errors.Join(err, db.Close())
	}
	if !os.SameFile(held, named) {
		return nil, errors.Join(errReplaced, db.Close())
	}
	return db, nil
}

var errReplaced = errors.New("another file took its place meanwhile")

func noRoomToCompact(path string, need int64, free uint64) error {
	return engine.Bad(path, fmt.Sprintf("cannot be compacted, that takes %d MB and %d MB are free", need>>20+1, free>>20), "make room on the disk and try again; nothing was changed")
}

func compactProblem(path string, err error) error {
	var problem *engine.Problem
	switch {
	case errors.As(err, &problem):
		return err
	case noRoom(err):
		return engine.Bad(path, "was not compacted, the disk is full", "make room and try again; nothing was changed")
	}
	return engine.Bad(path, "was not compacted ("+err.Error()+")", "try again; nothing was changed")
}
