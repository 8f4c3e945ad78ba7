//go:build unix

package store_test

import (
	"bytes"
	"errors"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/quiz"
	"lintel/server/store"
	"lintel/server/store/storetest"
)

// fat is an event whose body fills a few pages.
func fat(n int, seq uint64) quiz.Event {
	e := storetest.Answer(n, seq)
	e.Body = quiz.Raw(`{"text":"` + string(bytes.Repeat([]byte("s"), 20_000)) + `"}`)
	return e
}

// fillUp appends until the store says it is full, and returns what was
// acknowledged.
func fillUp(t *testing.T, s *store.Store) (acked uint64) {
	t.Helper()
	_, err := s.Register(storetest.ID(1), storetest.Secret(1), "Engine")
	require.NoError(t, err)
	for seq := uint64(1); seq < 2000; seq++ {
		got, err := s.Append(storetest.ID(1), []quiz.Event{fat(1, seq)})
		if err != nil {
			require.ErrorIs(t, err, quiz.ErrFull)
			require.ErrorContains(t, err, "the server's disk is full: nothing was stored")
			return acked
		}
		acked = got
	}
	t.Fatal("the store never filled up")
	return 0
}

// requireWhole checks that a full store still reads, holds exactly what it
// acknowledged, and is ready for when there is room.
func requireWhole(t *testing.T, s *store.Store, acked uint64) {
	t.Helper()
	require.NotZero(t, acked)
	held, err := s.Acked(storetest.ID(1))
	require.NoError(t, err)
	require.Equal(t, acked, held)
	records := storetest.All(t, s, storetest.ID(1))
	require.Len(t, records, int(acked))
	for i, r := range records {
		require.Equal(t, fat(1, uint64(i)+1), r.Event)
	}
	require.NoError(t, s.Ready(), "a full disk is not a broken store")
}

func TestAFullFileGetsOneSentence(t *testing.T) {
	path := filepath.Join(t.TempDir(), store.FileName)
	s := open(t, path, store.Options{MaxBytes: 2 << 20})
	acked := fillUp(t, s)
	requireWhole(t, s, acked)
	require.NoError(t, s.Close())

	s = open(t, path, store.Options{MaxBytes: 8 << 20})
	got, err := s.Append(storetest.ID(1), []quiz.Event{fat(1, acked+1)})
	require.NoError(t, err, "with more room it goes on where it stopped")
	assert.Equal(t, acked+1, got)
}

// The same where the kernel refuses the write itself: the test binary runs again
// under a limit on the size of files, as set by the shell's ulimit -f.
func TestAFullDiskGetsOneSentence(t *testing.T) {
	if path := os.Getenv("LINTEL_TEST_FULL"); path != "" {
		var limit syscall.Rlimit
		require.NoError(t, syscall.Getrlimit(syscall.RLIMIT_FSIZE, &limit))
		limit.Cur = 3 << 20
		require.NoError(t, syscall.Setrlimit(syscall.RLIMIT_FSIZE, &limit))
		s, err := store.Open(path, store.Options{})
		require.NoError(t, err)
		acked := fillUp(t, s)
		requireWhole(t, s, acked)
		limit.Cur = limit.Max
		require.NoError(t, syscall.Setrlimit(syscall.RLIMIT_FSIZE, &limit))
		got, err := s.Append(storetest.ID(1), []quiz.Event{fat(1, acked+1)})
		require.NoError(t, err, "as soon as there is room it goes on, without a restart")
		require.Equal(t, acked+1, got)
		require.NoError(t, s.Close())
		return
	}
	path := filepath.Join(t.TempDir(), store.FileName)
	again := exec.Command(os.Args[0], "-test.run=^TestAFullDiskGetsOneSentence$", "-test.v")
	again.Env = append(os.Environ(), "LINTEL_TEST_FULL="+path)
	text, err := again.CombinedOutput()
	require.NoError(t, err, string(text))
	census, err := store.CheckFile(path)
	require.NoError(t, err)
	assert.NotZero(t, census.Events)
}

// leaky takes some bytes and then fails as a full disk does.
type leaky struct {
	room int
	with error
}

func (l *leaky) Write(p []byte) (int, error) {
	if len(p) > l.room {
		return l.room, l.with
	}
	l.room -= len(p)
	return len(p), nil
}

func TestABackupThatFailsLeavesNothing(t *testing.T) {
	s := open(t, filled(t, 3, 100), store.Options{})
	for _, c := range []struct {
		with error
		says string
	}{{syscall.ENOSPC, "the disk is full"}, {errors.New("cable pulled"), "cable pulled"}} {
		folder := t.TempDir()
		_, err := store.SaveBackup(filepath.Join(folder, "copy.db"), func(io.Writer) error {
			if _, err := s.WriteTo(&leaky{room: 20_000, with: c.with}); err != nil {
				return err
			}
			return nil
		})
		require.ErrorContains(t, err, c.says)
		left, err := os.ReadDir(folder)
		require.NoError(t, err)
		assert.Empty(t, left)
	}
}
