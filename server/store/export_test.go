package store

import (
	"time"

	bolt "go.etcd.io/bbolt"
)

// PretendFree makes the disk seem to have so much room until it is undone.
func PretendFree(bytes uint64) (undo func()) {
	real := freeBytes
	freeBytes = func(string) (uint64, bool) { return bytes, true }
	return func() { freeBytes = real }
}

// OpenAlone opens a store as the server does and lets it go.
func OpenAlone(path string) error {
	db, err := openAlone(path, bolt.Options{Timeout: 5 * time.Second})
	if err != nil {
		return err
	}
	return db.Close()
}
