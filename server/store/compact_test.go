package store_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	bolt "go.etcd.io/bbolt"

	"lintel/quiz"
	"lintel/server/store"
	"lintel/server/store/storetest"
)

// marker is what must not be found in a file after it was erased.
const marker = "MARKER-5f1e9a-OF-ONE-PERSON"

// marked makes a store in which one device of two wrote the marker and was erased.
func marked(t *testing.T) (path string) {
	t.Helper()
	path = filled(t, 2, 50)
	s, err := store.Open(path, store.Options{})
	require.NoError(t, err)
	const n = 3
	_, err = s.Register(storetest.ID(n), storetest.Secret(n), "Rook")
	require.NoError(t, err)
	for seq := uint64(1); seq <= 40; seq++ {
		e := storetest.Answer(n, seq)
		e.Body = quiz.Raw(`{"text":"` + strings.Repeat(marker, 20) + `"}`)
		_, err = s.Append(storetest.ID(n), []quiz.Event{e})
		require.NoError(t, err)
	}
	require.NoError(t, s.Erase(storetest.ID(n), nil, quiz.Deed{By: "phone", Did: "erase", What: "a device"}))
	require.NoError(t, s.Close())
	return path
}

func holdsMarker(t *testing.T, path string) bool {
	t.Helper()
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	return strings.Contains(string(text), marker)
}

// What was erased is in the file before, and not a byte of it afterwards; all
// else is there and takes more. Nothing is done twice.
func TestWhatWasErasedLeavesTheFile(t *testing.T) {
	path := marked(t)
	require.True(t, holdsMarker(t, path), "bbolt leaves it in free pages")
	before, err := store.CheckFile(path)
	require.NoError(t, err)

	done, err := store.CompactErased(path)
	require.NoError(t, err)
	assert.True(t, done)
	assert.False(t, holdsMarker(t, path))
	after, err := store.CheckFile(path)
	require.NoError(t, err)
	assert.Equal(t, before, after)

	sum, _ := fingerprint(t, path)
	done, err = store.CompactErased(path)
	require.NoError(t, err)
	assert.False(t, done, "nothing was erased since")
	again, _ := fingerprint(t, path)
	assert.Equal(t, sum, again)

	s := open(t, path, store.Options{})
	acked, err := s.Append(storetest.ID(1), storetest.Answers(1, 51, 60))
	require.NoError(t, err)
	assert.EqualValues(t, 60, acked)
	devices, err := s.Devices("", 10)
	require.NoError(t, err)
	assert.Len(t, devices, 2)
}

// A roster names people: taking it away marks the file as erasing a device does.
// Control: taking a set away does not.
func TestARosterTakenAwayLeavesTheFile(t *testing.T) {
	for kind, leaves := range map[quiz.DocKind]bool{quiz.RosterDoc: true, quiz.SetDoc: false} {
		path := filepath.Join(t.TempDir(), store.FileName)
		s, err := store.Open(path, store.Options{})
		require.NoError(t, err)
		require.NoError(t, s.Save(quiz.Deed{}, quiz.Doc{Kind: kind, ID: "d", Body: quiz.Raw(`{"title":"` + strings.Repeat(marker, 50) + `"}`)}))
		require.NoError(t, s.Save(quiz.Deed{}, quiz.Doc{Kind: kind, ID: "d", Rev: 1}))
		require.NoError(t, s.Close())
		done, err := store.CompactErased(path)
		require.NoError(t, err)
		assert.Equal(t, leaves, done, kind)
		assert.Equal(t, !leaves, holdsMarker(t, path), kind)
	}
}

// Whatever stands in the way, the store keeps every byte and nothing stays behind.
func TestCompactingIsWholeOrNotAtAll(t *testing.T) {
	untouched := func(t *testing.T, path string, compact func() error, says string) {
		sum, _ := fingerprint(t, path)
		require.ErrorContains(t, compact(), says)
		again, _ := fingerprint(t, path)
		assert.Equal(t, sum, again)
		left, err := filepath.Glob(filepath.Join(filepath.Dir(path), ".compact-*"))
		require.NoError(t, err)
		assert.Empty(t, left)
	}
	t.Run("too little room", func(t *testing.T) {
		path := marked(t)
		defer store.PretendFree(1000)()
		untouched(t, path, func() error { _, err := store.CompactErased(path); return err }, "cannot be compacted, that takes 1 MB and 0 MB are free")
	})
	t.Run("a server on it", func(t *testing.T) {
		path := marked(t)
		open(t, path, store.Options{})
		untouched(t, path, func() error { _, _, err := store.Compact(path); return err }, "is in use by another Lintel")
	})
	t.Run("not a store", func(t *testing.T) {
		path := filepath.Join(t.TempDir(), store.FileName)
		require.NoError(t, os.WriteFile(path, []byte(strings.Repeat("notes ", 3000)), 0o600))
		untouched(t, path, func() error { _, _, err := store.Compact(path); return err }, "is not a Lintel store")
	})
	t.Run("torn inside", func(t *testing.T) {
		path := marked(t)
		rewrite(t, path, func(tx *bolt.Tx) error { return tx.Bucket([]byte("ids")).Put([]byte("nobody's"), []byte("x")) })
		untouched(t, path, func() error { _, _, err := store.Compact(path); return err }, "was not compacted")
	})
}

// What a killed run left behind goes with the next one.
func TestAHalfOfAKilledRunIsClearedAway(t *testing.T) {
	path := marked(t)
	half := filepath.Join(filepath.Dir(path), ".compact-123")
	require.NoError(t, os.WriteFile(half, []byte(marker), 0o600))
	done, err := store.CompactErased(path)
	require.NoError(t, err)
	assert.True(t, done)
	assert.NoFileExists(t, half)
}

// One who waits for the lock while the file is replaced must not go on to write
// to the one that has lost its name.
func TestAFileThatWasReplacedIsNotWrittenTo(t *testing.T) {
	path := filled(t, 1, 3)
	held, err := bolt.Open(path, 0o600, nil)
	require.NoError(t, err)
	came := make(chan error, 1)
	go func() { came <- store.OpenAlone(path) }()
	time.Sleep(100 * time.Millisecond)
	require.NoError(t, os.Rename(filled(t, 1, 4), path))
	require.NoError(t, held.Close())
	require.ErrorContains(t, <-came, "another file took its place")
	require.NoError(t, store.OpenAlone(path), "and once it is there it is opened")
}
