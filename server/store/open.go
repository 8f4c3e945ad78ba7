package store

import (
	"encoding/binary"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"time"

	bolt "go.etcd.io/bbolt"

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
// of ours, or that a newer program wrote; the error is then an engine.Problem. A file of
// an older schema is brought up to this one.
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
	db, err := openAlone(path, bolt.Options{Timeout: opts.LockWait, FreelistType: bolt.FreelistMapType, MaxSize: opts.MaxBytes})
	if err != nil {
		return nil, openProblem(path, err)
	}
	if err := migrate(db); err != nil {
		return nil, errors.Join(openProblem(path, err), db.Close())
	}
	s := &Store{db: db, now: opts.Now, maxDevices: opts.MaxDevices}
	s.writer = startWriter(db)
	return s, nil
}

// OpenExisting is Open for a store that must be there already.
func OpenExisting(path string) (*Store, error) {
	if _, err := os.Stat(path); err != nil {
		return nil, openProblem(path, err)
	}
	return Open(path, Options{})
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
	meta, err := tx.CreateBucket(metaBucket)
	if err != nil {
		return err
	}
	if err := meta.Put(appKey, []byte(appName)); err != nil {
		return err
	}
	return bringUp(tx)
}

// bringUp adds what later versions of the layout brought, and says so. Every
// version so far only adds buckets, so that an older file keeps all it has.
func bringUp(tx *bolt.Tx) error {
	for _, buckets := range bySchema {
		for _, name := range buckets {
			if _, err := tx.CreateBucketIfNotExists(name); err != nil {
				return err
			}
		}
	}
	return tx.Bucket(metaBucket).Put(schemaKey, binary.BigEndian.AppendUint64(nil, Schema))
}

// migrate brings a file of an older schema up to this one, in one commit.
func migrate(db *bolt.DB) error {
	older := false
	if err := db.View(func(tx *bolt.Tx) error { older = schemaOf(tx) < Schema; return nil }); err != nil || !older {
		return err
	}
	return db.Update(bringUp)
}
