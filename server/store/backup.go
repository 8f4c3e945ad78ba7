package store

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	bolt "go.etcd.io/bbolt"

	"lintel/engine"
)

// WriteTo writes a whole copy of the store as of one moment, while writes go on.
func (s *Store) WriteTo(w io.Writer) (n int64, err error) {
	err = s.db.View(func(tx *bolt.Tx) error {
		n, err = tx.WriteTo(w)
		return err
	})
	return n, err
}

// CopyFile writes a copy of the store file at path, which no server holds.
func CopyFile(path string, w io.Writer) (n int64, err error) {
	db, err := openToRead(path, DefaultLockWait)
	if err != nil {
		return 0, err
	}
	err = db.View(func(tx *bolt.Tx) error {
		n, err = tx.WriteTo(w)
		return err
	})
	return n, errors.Join(err, db.Close())
}

// SaveBackup takes what write gives and puts it at path: into a file beside it
// first, walked through, made durable, and only then given its name. A file
// that is already there is never replaced, and a failure leaves nothing behind.
func SaveBackup(path string, write func(io.Writer) error) (Census, error) {
	if _, err := os.Lstat(path); err == nil {
		return Census{}, engine.Bad(path, "already exists", "name a new file; a backup is never written over")
	}
	temp, census, err := saveBeside(path, write)
	if err != nil {
		return Census{}, err
	}
	defer temp.drop()
	if err := os.Link(temp.path(), path); err != nil {
		return Census{}, backupProblem(path, err)
	}
	return census, syncFolder(filepath.Dir(path))
}

// saveBeside writes a whole, checked and durable store next to path.
func saveBeside(path string, write func(io.Writer) error) (*half, Census, error) {
	temp, err := newHalf(filepath.Dir(path))
	if err != nil {
		return nil, Census{}, backupProblem(path, err)
	}
	if err := errors.Join(write(temp.file), temp.file.Sync()); err != nil {
		temp.drop()
		return nil, Census{}, backupProblem(path, err)
	}
	census, err := CheckFile(temp.path())
	if err != nil {
		temp.drop()
		return nil, Census{}, err
	}
	return temp, census, nil
}

func backupProblem(path string, err error) error {
	var problem *engine.Problem
	switch {
	case errors.As(err, &problem):
		return err
	case noRoom(err):
		return engine.Bad(path, "cannot be written, the disk is full", "make room or name a file on another disk; nothing was left behind")
	case errors.Is(err, fs.ErrNotExist), errors.Is(err, fs.ErrPermission):
		return engine.Bad(path, "cannot be written here", "name a file in a folder that exists and that this user may write")
	}
	return engine.Bad(path, "was not written ("+err.Error()+")", "try again; nothing was left behind")
}
