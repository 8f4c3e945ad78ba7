package store_test

import (
	"bytes"
	"io"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/quiz"
	"lintel/server/store"
	"lintel/server/store/storetest"
)

func whole(s *store.Store) func(io.Writer) error {
	return func(w io.Writer) error { _, err := s.WriteTo(w); return err }
}

// A backup taken while devices write holds, of each history, a beginning
// without a gap, and everything acknowledged before it began.
func TestHotBackupHoldsWhatWasAcknowledged(t *testing.T) {
	s := open(t, filepath.Join(t.TempDir(), store.FileName), store.Options{})
	_, err := s.Register(storetest.ID(1), storetest.Secret(1), "Engine")
	require.NoError(t, err)
	stop, done := make(chan struct{}), make(chan struct{})
	go func() {
		defer close(done)
		for seq := uint64(1); ; seq++ {
			select {
			case <-stop:
				return
			default:
				_, err := s.Append(storetest.ID(1), storetest.Answers(1, seq, seq))
				assert.NoError(t, err)
			}
		}
	}()
	folder := t.TempDir()
	for _, name := range []string{"one.db", "two.db", "three.db"} {
		before, err := s.Acked(storetest.ID(1))
		require.NoError(t, err)
		path := filepath.Join(folder, name)
		census, err := store.SaveBackup(path, whole(s))
		require.NoError(t, err)
		assert.GreaterOrEqual(t, census.Events, before)
		again, err := store.CheckFile(path)
		require.NoError(t, err)
		assert.Equal(t, census, again)
	}
	close(stop)
	<-done
	left, err := os.ReadDir(folder)
	require.NoError(t, err)
	assert.Len(t, left, 3, "no half file stays behind")
}

func TestABackupIsNeverWrittenOver(t *testing.T) {
	s := open(t, filled(t, 1, 3), store.Options{})
	path := filepath.Join(t.TempDir(), "copy.db")
	require.NoError(t, os.WriteFile(path, []byte("last year's"), 0o600))
	_, err := store.SaveBackup(path, whole(s))
	require.ErrorContains(t, err, "already exists")
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, "last year's", string(text))
}

func TestATornBackupIsNotSaved(t *testing.T) {
	s := open(t, filled(t, 3, 100), store.Options{})
	var copied bytes.Buffer
	require.NoError(t, whole(s)(&copied))
	folder := t.TempDir()
	_, err := store.SaveBackup(filepath.Join(folder, "copy.db"), func(w io.Writer) error {
		_, err := w.Write(copied.Bytes()[:copied.Len()/2])
		return err
	})
	require.ErrorContains(t, err, "is cut short")
	left, err := os.ReadDir(folder)
	require.NoError(t, err)
	assert.Empty(t, left)
}

func TestRestoreBringsBackAndKeepsWhatWasThere(t *testing.T) {
	path := filled(t, 2, 10)
	backup := filepath.Join(t.TempDir(), "copy.db")
	s, err := store.Open(path, store.Options{})
	require.NoError(t, err)
	_, err = store.SaveBackup(backup, whole(s))
	require.NoError(t, err)
	_, err = s.Append(storetest.ID(1), storetest.Answers(1, 11, 20))
	require.NoError(t, err)

	at := time.Date(2026, 3, 4, 5, 6, 7, 0, time.UTC)
	_, _, err = store.Restore(backup, path, at)
	require.ErrorContains(t, err, "is in use by another Lintel", "not under a running server")
	require.NoError(t, s.Close())

	kept, census, err := store.Restore(backup, path, at)
	require.NoError(t, err)
	assert.EqualValues(t, 20, census.Events)
	assert.Equal(t, path+".before-20260304T050607.000Z", kept)
	old, err := store.CheckFile(kept)
	require.NoError(t, err)
	assert.EqualValues(t, 30, old.Events, "what was there is not lost")

	s = open(t, path, store.Options{})
	acked, err := s.Append(storetest.ID(1), storetest.Answers(1, 13, 15))
	require.ErrorIs(t, err, quiz.ErrGap, "the device learns from where to send again")
	require.EqualValues(t, 10, acked)
	acked, err = s.Append(storetest.ID(1), storetest.Answers(1, 11, 20))
	require.NoError(t, err)
	assert.EqualValues(t, 20, acked)
}

func TestRestoreIntoAnEmptyFolder(t *testing.T) {
	path := filepath.Join(t.TempDir(), store.FileName)
	kept, census, err := store.Restore(filled(t, 1, 4), path, time.Now())
	require.NoError(t, err)
	assert.Empty(t, kept)
	assert.EqualValues(t, 4, census.Events)
	open(t, path, store.Options{})
}

func TestRestoreRefusesWhatIsNoBackup(t *testing.T) {
	path := filled(t, 1, 4)
	sum, _ := fingerprint(t, path)
	text := filepath.Join(t.TempDir(), "notes.txt")
	require.NoError(t, os.WriteFile(text, []byte("not a store"), 0o600))
	for _, from := range []string{text, filepath.Join(t.TempDir(), "missing.db"), t.TempDir()} {
		_, _, err := store.Restore(from, path, time.Now())
		require.Error(t, err, from)
	}
	again, _ := fingerprint(t, path)
	assert.Equal(t, sum, again)
	left, err := os.ReadDir(filepath.Dir(path))
	require.NoError(t, err)
	assert.Len(t, left, 1, "no half file stays behind")

	nowhere := filepath.Join(t.TempDir(), "new")
	_, _, err = store.Restore(text, filepath.Join(nowhere, store.FileName), time.Now())
	require.ErrorContains(t, err, "name a file that the command backup wrote")
	assert.NoDirExists(t, nowhere, "nor a folder")
}
