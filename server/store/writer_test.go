package store

import (
	"errors"
	"os"
	"path/filepath"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	bolt "go.etcd.io/bbolt"

	"lintel/quiz"
)

// bucket is where these tests write.
var bucket = []byte("b")

// startOn is a writer over a fresh file, and the file itself to harm.
func startOn(t *testing.T) (*writer, *bolt.DB, *os.File) {
	t.Helper()
	var file *os.File
	db, err := bolt.Open(filepath.Join(t.TempDir(), "w.db"), 0o600, &bolt.Options{OpenFile: func(name string, flag int, mode os.FileMode) (*os.File, error) {
		var err error
		file, err = os.OpenFile(name, flag, mode)
		return file, err
	}})
	require.NoError(t, err)
	require.NoError(t, db.Update(func(tx *bolt.Tx) error { _, err := tx.CreateBucket(bucket); return err }))
	w := startWriter(db)
	t.Cleanup(w.stop)
	return w, db, file
}

func write(key string) func(*bolt.Tx) error {
	return func(tx *bolt.Tx) error { return tx.Bucket(bucket).Put([]byte(key), []byte("x")) }
}

func has(t *testing.T, db *bolt.DB, key string) (found bool) {
	t.Helper()
	require.NoError(t, db.View(func(tx *bolt.Tx) error { found = tx.Bucket(bucket).Get([]byte(key)) != nil; return nil }))
	return found
}

// A group is handed to commit directly, so that its members surely share one.
func TestInAGroupEachJobHasItsOwnOutcome(t *testing.T) {
	_, db, _ := startOn(t)
	w := &writer{db: db}
	slip := errors.New("a slip in one job")
	group := []*job{
		{do: write("first")},
		{do: func(*bolt.Tx) error { return quiz.ErrGap }},
		{do: func(tx *bolt.Tx) error { return errors.Join(write("half")(tx), slip) }},
		{do: write("last")},
	}
	outcomes := w.commit(group)
	require.NoError(t, outcomes[0])
	require.ErrorIs(t, outcomes[1], quiz.ErrGap)
	require.ErrorIs(t, outcomes[2], slip)
	require.NoError(t, outcomes[3])
	assert.True(t, has(t, db, "first"))
	assert.True(t, has(t, db, "last"))
	assert.False(t, has(t, db, "half"), "what the faulty job wrote is undone")
	require.NoError(t, w.state(), "one job's fault does not break the store")
}

func TestAFailedCommitStopsTheWriter(t *testing.T) {
	w, _, file := startOn(t)
	require.NoError(t, w.do(write("before")))
	require.NoError(t, file.Close()) // as when the disk goes away
	err := w.do(write("after"))
	require.ErrorIs(t, err, quiz.ErrBroken)
	require.ErrorIs(t, w.ready(), quiz.ErrBroken)
	require.ErrorIs(t, w.do(write("later")), quiz.ErrBroken)
}

func TestStopCommitsWhatWasHandedIn(t *testing.T) {
	w, db, _ := startOn(t)
	var all sync.WaitGroup
	var mu sync.Mutex
	taken := map[string]bool{}
	for i := range 200 {
		all.Go(func() {
			key := string(rune('A' + i))
			switch err := w.do(write(key)); {
			case err == nil:
				mu.Lock()
				taken[key] = true
				mu.Unlock()
			default:
				assert.ErrorIs(t, err, quiz.ErrClosed)
			}
		})
	}
	w.stop()
	all.Wait()
	for key := range taken {
		assert.True(t, has(t, db, key))
	}
	require.ErrorIs(t, w.do(write("late")), quiz.ErrClosed)
	w.stop() // a second time does nothing
}
