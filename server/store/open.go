package store

import (
	"encoding/binary"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"time"

	bolt "go.etcd.io/bbolt"
	bolterrors "go.etcd.io/bbolt/errors"

	"lintel/engine"
	"lintel/quiz"
)

// FileName is the store's file in a data folder.
const FileName = "lintel.db"

// Options change what a store does. The zero value is right for a server.
type Options struct {
	Now        func() time.Time // the server's clock; time.Now when nil
	MaxDevices uint64           // 0 means DefaultMaxDevices
	MaxBytes   int              // of the file; 0 means what the disk holds
	LockWait   time.Duration    // how long to wait for another process; 0 means DefaultLockWait
}

// Defaults, both chosen by us: five times the 1,000 phones of the largest class
// tested, for twenty academies; and long enough for a server that is stopping.
const (
	DefaultMaxDevices = 100_000
	DefaultLockWait   = time.Second
)

// Store is the bbolt store. Make one with Open.
type Store struct {
	db         *bolt.DB
	now        func() time.Time
	maxDevices uint64
	writer     *writer
}

var _ quiz.Store = (*Store)(nil)

// Open opens the store at path and makes it when there is no file. It refuses,
// and leaves as it is, a file that another process holds, that is not a store
// of ours, or that a newer program wrote; the error is then an engine.Problem.
func Open(path string, opts Options) (*Store, error) {
	if opts.Now == nil {
		opts.Now = time.Now
	}
	if opts.MaxDevices == 0 {
		opts.MaxDevices = DefaultMaxDevices
	}
	if opts.LockWait == 0 {
		opts.LockWait = DefaultLockWait
	}
	if _, err := os.Stat(path); errors.Is(err, fs.ErrNotExist) {
		if err := create(path); err != nil {
			return nil, err
		}
	}
	// Looked at first without the right to write, so that a file that is not
	// ours keeps every byte.
	if err := inspect(path, opts.LockWait); err != nil {
		return nil, err
	}
	db, err := bolt.Open(path, 0o600, &bolt.Options{Timeout: opts.LockWait, FreelistType: bolt.FreelistMapType, MaxSize: opts.MaxBytes})
	if err != nil {
		return nil, openProblem(path, err)
	}
	s := &Store{db: db, now: opts.Now, maxDevices: opts.MaxDevices}
	s.writer = startWriter(db)
	return s, nil
}

// OpenToRead opens a store that no server holds, to read from only: whatever
// would write returns quiz.ErrClosed.
func OpenToRead(path string) (*Store, error) {
	db, err := openToRead(path, DefaultLockWait)
	if err != nil {
		return nil, err
	}
	s := &Store{db: db, now: time.Now, writer: startWriter(db)}
	s.writer.stop()
	return s, nil
}

// Close commits what is waiting and lets the file go.
func (s *Store) Close() error {
	s.writer.stop()
	return s.db.Close()
}

// Ready returns nil while writes are taken.
func (s *Store) Ready() error { return s.writer.ready() }

// create makes an empty store under another name and links it into place, so
// that a crash leaves a whole store or none.
func create(path string) error {
	temp, err := os.CreateTemp(filepath.Dir(path), ".new-store-*")
	if err != nil {
		return folderProblem(path, err)
	}
	defer os.Remove(temp.Name())
	temp.Close()
	db, err := bolt.Open(temp.Name(), 0o600, nil)
	if err != nil {
		return folderProblem(path, err)
	}
	if err := errors.Join(db.Update(layOut), db.Close()); err != nil {
		return folderProblem(path, err)
	}
	if err := os.Link(temp.Name(), path); err != nil && !errors.Is(err, fs.ErrExist) {
		return folderProblem(path, err)
	}
	return syncFolder(filepath.Dir(path))
}

func layOut(tx *bolt.Tx) error {
	for _, name := range allBuckets {
		if _, err := tx.CreateBucket(name); err != nil {
			return err
		}
	}
	meta := tx.Bucket(metaBucket)
	if err := meta.Put(appKey, []byte(appName)); err != nil {
		return err
	}
	return meta.Put(schemaKey, binary.BigEndian.AppendUint64(nil, Schema))
}

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
	db, err := bolt.Open(path, 0o600, &bolt.Options{ReadOnly: true, Timeout: wait})
	if err != nil {
		return nil, openProblem(path, err)
	}
	if err := db.View(func(tx *bolt.Tx) error { return firstOf(path, tx, checkLength, checkLayout) }); err != nil {
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
	text := meta.Get(schemaKey)
	if len(text) != seqLen {
		return notOurs(path)
	}
	if schema := binary.BigEndian.Uint64(text); schema > Schema {
		return engine.Bad(path, "was written by a newer Lintel (schema "+strconv.FormatUint(schema, 10)+", this one reads up to "+strconv.Itoa(Schema)+")",
			"run that version, or restore a backup made by this one; the file was not touched")
	}
	for _, name := range allBuckets {
		if tx.Bucket(name) == nil {
			return notOurs(path)
		}
	}
	return nil
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
	if isFull(err) {
		return engine.Bad(path, "cannot be made, the disk is full", "make room or choose another data folder with -data")
	}
	return engine.Bad(path, "cannot be made ("+err.Error()+")", "choose a data folder that this user may write with -data")
}

// syncFolder makes a new name in a folder outlast a power cut.
func syncFolder(path string) error {
	folder, err := os.Open(path)
	if err != nil {
		return err
	}
	return errors.Join(folder.Sync(), folder.Close())
}
