package store

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"time"

	bolt "go.etcd.io/bbolt"
	bolterrors "go.etcd.io/bbolt/errors"

	"lintel/engine"
)

// Restore puts a backup in the place of the store at path, which no server may
// hold, and makes the folder where there is none. The backup is copied beside it and walked through first, and only a
// whole one takes the name, in one step. A file that was there is kept under
// the name returned as kept; nothing is ever thrown away.
func Restore(backup, path string, now time.Time) (kept string, census Census, err error) {
	if err := inspect(backup, DefaultLockWait); err != nil {
		return "", Census{}, asBackup(backup, err)
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		return "", Census{}, folderProblem(filepath.Dir(path), err)
	}
	release, err := holdStill(path)
	if err != nil {
		return "", Census{}, err
	}
	defer release()
	temp, census, err := saveBeside(path, func(w io.Writer) error {
		_, err := CopyFile(backup, w)
		return err
	})
	if err != nil {
		return "", Census{}, err
	}
	defer temp.drop()
	if kept, err = setAside(path, now); err != nil {
		return "", Census{}, backupProblem(path, err)
	}
	temp.file.Close() // Windows renames no open file
	if err := os.Rename(temp.path(), path); err != nil {
		return kept, Census{}, backupProblem(path, err)
	}
	return kept, census, syncFolder(filepath.Dir(path))
}

// asBackup says what is to be done where a backup, and not the store, is at fault.
func asBackup(backup string, err error) error {
	var problem *engine.Problem
	if !errors.As(err, &problem) {
		return err
	}
	return engine.Bad(backup, problem.What, "name a file that the command backup wrote; nothing was restored")
}

// holdStill takes the lock of the store at path, so that no server starts on it
// meanwhile, and refuses when one has it. A reader's lock does: a server wants
// the file to itself. A file that is no store has no lock.
func holdStill(path string) (release func(), err error) {
	if _, err := os.Stat(path); errors.Is(err, fs.ErrNotExist) {
		return func() {}, nil
	}
	db, err := bolt.Open(path, 0o600, &bolt.Options{ReadOnly: true, Timeout: DefaultLockWait})
	switch {
	case errors.Is(err, bolterrors.ErrTimeout):
		return nil, openProblem(path, err)
	case err != nil:
		return func() {}, nil
	}
	return func() { db.Close() }, nil
}

// setAside gives the file at path a second name, by which it outlives the
// rename that follows.
func setAside(path string, now time.Time) (kept string, err error) {
	kept = path + ".before-" + now.UTC().Format("20060102T150405.000Z")
	if err := os.Link(path, kept); errors.Is(err, fs.ErrNotExist) {
		return "", nil
	} else if err != nil {
		return "", err
	}
	return kept, nil
}
