package store_test

import (
	"crypto/sha256"
	"encoding/binary"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	bolt "go.etcd.io/bbolt"

	"lintel/engine"
	"lintel/quiz"
	"lintel/server/store"
	"lintel/server/store/storetest"
)

// print is a file's bytes and time of change.
func fingerprint(t *testing.T, path string) (sum [32]byte, changed time.Time) {
	t.Helper()
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	info, err := os.Stat(path)
	require.NoError(t, err)
	return sha256.Sum256(text), info.ModTime()
}

// filled is the path of a closed store with devices and events in it.
func filled(t *testing.T, devices int, events uint64) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), store.FileName)
	s, err := store.Open(path, store.Options{})
	require.NoError(t, err)
	for n := 1; n <= devices; n++ {
		_, err := s.Register(storetest.ID(n), storetest.Secret(n), "Engine")
		require.NoError(t, err)
		_, err = s.Append(storetest.ID(n), storetest.Answers(n, 1, events))
		require.NoError(t, err)
	}
	require.NoError(t, s.Close())
	return path
}

// rewrite changes a store behind its back.
func rewrite(t *testing.T, path string, change func(*bolt.Tx) error) {
	t.Helper()
	db, err := bolt.Open(path, 0o600, nil)
	require.NoError(t, err)
	require.NoError(t, db.Update(change))
	require.NoError(t, db.Close())
}

// Each of these files is refused in one sentence and keeps every byte.
func TestRefusedFilesStayUntouched(t *testing.T) {
	write := func(text []byte) string {
		path := filepath.Join(t.TempDir(), store.FileName)
		require.NoError(t, os.WriteFile(path, text, 0o600))
		return path
	}
	foreign := filepath.Join(t.TempDir(), store.FileName)
	rewrite(t, foreign, func(tx *bolt.Tx) error {
		bucket, err := tx.CreateBucket([]byte("recipes"))
		if err != nil {
			return err
		}
		return bucket.Put([]byte("bread"), []byte("flour"))
	})
	newer := filled(t, 1, 3)
	rewrite(t, newer, func(tx *bolt.Tx) error {
		return tx.Bucket([]byte("meta")).Put([]byte("schema"), binary.BigEndian.AppendUint64(nil, store.Schema+1))
	})
	short := filled(t, 3, 200)
	require.NoError(t, os.Truncate(short, 16<<10))
	whole, err := os.ReadFile(filled(t, 1, 3))
	require.NoError(t, err)
	scribbled := append([]byte{}, whole...)
	for i := range 2 * os.Getpagesize() {
		scribbled[i] ^= 0x5a
	}

	for _, c := range []struct{ name, path, says string }{
		{"empty", write(nil), "is not a Lintel store"},
		{"text", write([]byte("call sign,score\nEngine 1,3\n")), "is not a Lintel store"},
		{"long text", write(make([]byte, 64<<10)), "is not a Lintel store"},
		{"another program's", foreign, "is not a Lintel store"},
		{"scribbled over", write(scribbled), "is not a Lintel store"},
		{"newer", newer, "was written by a newer Lintel (schema 3, this one reads up to 2)"},
		{"cut short", short, "is cut short"},
	} {
		t.Run(c.name, func(t *testing.T) {
			sum, changed := fingerprint(t, c.path)
			_, err := store.Open(c.path, store.Options{})
			var problem *engine.Problem
			require.ErrorAs(t, err, &problem)
			assert.Equal(t, c.path, problem.Where)
			assert.Contains(t, problem.What, c.says)
			assert.NotEmpty(t, problem.Do)
			again, stillChanged := fingerprint(t, c.path)
			assert.Equal(t, sum, again, "not a byte is changed")
			assert.Equal(t, changed, stillChanged)
			left, err := os.ReadDir(filepath.Dir(c.path))
			require.NoError(t, err)
			assert.Len(t, left, 1, "nothing is left beside it")
		})
	}
}

// asOfSchema1 turns a store into what a program of the first schema wrote.
func asOfSchema1(t *testing.T, path string) {
	t.Helper()
	rewrite(t, path, func(tx *bolt.Tx) error {
		for _, name := range []string{"instructors", "keys", "rosters", "sets", "classes", "lines", "deeds"} {
			if err := tx.DeleteBucket([]byte(name)); err != nil {
				return err
			}
		}
		return tx.Bucket([]byte("meta")).Put([]byte("schema"), binary.BigEndian.AppendUint64(nil, 1))
	})
}

// A file of the first schema is checked, copied and exported as it is, and
// brought up when a server opens it.
func TestAnOlderFileIsBroughtUp(t *testing.T) {
	path := filled(t, 2, 5)
	asOfSchema1(t, path)
	before := store.Census{Devices: 2, Events: 10, Answers: 10, Waiting: 10}
	census, err := store.CheckFile(path)
	require.NoError(t, err)
	require.Equal(t, before, census)
	old, err := store.OpenToRead(path)
	require.NoError(t, err)
	docs, err := old.Docs(quiz.ClassDoc, "", 10)
	require.NoError(t, err)
	assert.Empty(t, docs)
	deeds, err := old.Deeds(0, 10)
	require.NoError(t, err)
	assert.Empty(t, deeds)
	require.NoError(t, old.Close())

	s := open(t, path, store.Options{})
	census, err = s.Check()
	require.NoError(t, err)
	assert.Equal(t, before, census, "not a row is lost")
	require.NoError(t, s.Save(quiz.Deed{By: "x", Did: "made", What: "y"}, quiz.Doc{Kind: quiz.SetDoc, ID: "a", Body: quiz.Raw(`{}`)}))
	census, err = s.Check()
	require.NoError(t, err)
	assert.EqualValues(t, 1, census.Docs)

	torn := filled(t, 1, 1)
	rewrite(t, torn, func(tx *bolt.Tx) error { return tx.DeleteBucket([]byte("lines")) })
	_, err = store.Open(torn, store.Options{})
	require.ErrorContains(t, err, "is not a Lintel store", "a bucket of its own schema is missing")
}

func TestOneServerAtATime(t *testing.T) {
	path := filepath.Join(t.TempDir(), store.FileName)
	s := open(t, path, store.Options{})
	_, err := store.Open(path, store.Options{LockWait: 50 * time.Millisecond})
	require.ErrorContains(t, err, "is in use by another Lintel: stop that one first")
	require.NoError(t, s.Ready(), "the first one goes on")
}

func TestAFolderThatCannotBeWritten(t *testing.T) {
	_, err := store.Open(filepath.Join(t.TempDir(), "no such folder", store.FileName), store.Options{})
	var problem *engine.Problem
	require.ErrorAs(t, err, &problem)
	assert.Contains(t, problem.Do, "-data")
}

// The walk must see what a fault in the program could do.
func TestTheWalkSeesPlantedFaults(t *testing.T) {
	key := func(n int, seq uint64) []byte {
		id := make([]byte, 16)
		id[15] = byte(n)
		return binary.BigEndian.AppendUint64(id, seq)
	}
	for _, c := range []struct {
		name, says string
		plant      func(*bolt.Tx) error
	}{
		{"an event gone", "event 3 follows 1", func(tx *bolt.Tx) error { return tx.Bucket([]byte("events")).Delete(key(1, 2)) }},
		{"an event torn", "event 2 is not readable", func(tx *bolt.Tx) error { return tx.Bucket([]byte("events")).Put(key(1, 2), []byte("{")) }},
		{"an event under another number", "event 6 is not readable", func(tx *bolt.Tx) error {
			events := tx.Bucket([]byte("events"))
			return events.Put(key(1, 6), events.Get(key(1, 5)))
		}},
		{"an id gone", "is not found by its id", func(tx *bolt.Tx) error {
			first, _ := tx.Bucket([]byte("ids")).Cursor().First()
			return tx.Bucket([]byte("ids")).Delete(first)
		}},
		{"an id too many", "ids: holds 11 rows for 10 events", func(tx *bolt.Tx) error {
			return tx.Bucket([]byte("ids")).Put(make([]byte, 32), make([]byte, 8))
		}},
		{"an answer forgotten", "answer 4 must be either checked or waiting", func(tx *bolt.Tx) error { return tx.Bucket([]byte("waiting")).Delete(key(2, 4)) }},
		{"an answer in both", "answer 1 must be either checked or waiting", func(tx *bolt.Tx) error {
			return tx.Bucket([]byte("checks")).Put(key(1, 1), []byte(`{"v":1,"state":"agreed"}`))
		}},
		{"a class gone", "has a log and is not there", func(tx *bolt.Tx) error {
			return tx.Bucket([]byte("lines")).Put(key(9, 1), []byte(`{}`))
		}},
		{"a line gone", "line 2 follows 0", func(tx *bolt.Tx) error {
			if err := tx.Bucket([]byte("classes")).Put([]byte(storetest.ID(9)), []byte("\x00\x00\x00\x00\x00\x00\x00\x01{}")); err != nil {
				return err
			}
			return tx.Bucket([]byte("lines")).Put(key(9, 2), []byte(`{}`))
		}},
		{"a doc torn", "rosters r: is not readable", func(tx *bolt.Tx) error {
			return tx.Bucket([]byte("rosters")).Put([]byte("r"), []byte("{}"))
		}},
		{"a deed torn", "is not readable", func(tx *bolt.Tx) error { return tx.Bucket([]byte("deeds")).Put(key(0, 1)[16:], []byte("{}")) }},
		{"a device gone", "has events and is not registered", func(tx *bolt.Tx) error { return tx.Bucket([]byte("devices")).Delete(key(2, 0)[:16]) }},
		{"a device torn", "is not readable", func(tx *bolt.Tx) error { return tx.Bucket([]byte("devices")).Put(key(2, 0)[:16], []byte("{}")) }},
	} {
		t.Run(c.name, func(t *testing.T) {
			path := filled(t, 2, 5)
			census, err := store.CheckFile(path)
			require.NoError(t, err)
			require.Equal(t, store.Census{Devices: 2, Events: 10, Answers: 10, Waiting: 10}, census)
			rewrite(t, path, c.plant)
			_, err = store.CheckFile(path)
			require.ErrorContains(t, err, c.says)
		})
	}
}

func TestTheWalkRunsBesideWriters(t *testing.T) {
	s := open(t, filepath.Join(t.TempDir(), store.FileName), store.Options{})
	_, err := s.Register(storetest.ID(1), storetest.Secret(1), "Engine")
	require.NoError(t, err)
	done := make(chan struct{})
	go func() {
		defer close(done)
		for seq := uint64(1); seq <= 300; seq++ {
			_, err := s.Append(storetest.ID(1), storetest.Answers(1, seq, seq))
			assert.NoError(t, err)
			if seq%3 == 0 {
				assert.NoError(t, s.SetCheck(storetest.ID(1), seq, quiz.Check{V: 1, State: quiz.CheckAgreed}))
			}
		}
	}()
	for range 30 {
		_, err := s.Check()
		require.NoError(t, err)
	}
	<-done
}
