package keep_test

import (
	"bufio"
	"context"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/server/keep"
	"lintel/server/store"
)

// stuckIn names, for a process of its own, the folder into which it writes half a
// backup until it is killed.
const stuckIn = "LINTEL_TEST_HALF_BACKUP_IN"

func TestMain(m *testing.M) {
	folder := os.Getenv(stuckIn)
	if folder == "" {
		os.Exit(m.Run())
	}
	_, err := store.SaveBackup(filepath.Join(folder, "never.db"), func(w io.Writer) error {
		if _, err := w.Write(make([]byte, 4096)); err != nil {
			return err
		}
		fmt.Println("half way")
		select {}
	})
	fmt.Println("error", err)
	os.Exit(1)
}

// halves are the half-written files of a folder.
func halves(t *testing.T, folder string) []string {
	t.Helper()
	list, err := filepath.Glob(filepath.Join(folder, ".half-*"))
	require.NoError(t, err)
	return list
}

// A backup that was killed leaves half a file behind. The next one into that folder
// removes it and says so; one that is still being written it leaves alone.
func TestHalfOfAKilledBackupIsSwept(t *testing.T) {
	data, s := filled(t)
	require.NoError(t, s.Close())
	folder := t.TempDir()
	stuck := exec.Command(os.Args[0])
	stuck.Env = append(os.Environ(), stuckIn+"="+folder)
	said, err := stuck.StdoutPipe()
	require.NoError(t, err)
	require.NoError(t, stuck.Start())
	t.Cleanup(func() { _ = stuck.Process.Kill() })
	line, err := bufio.NewReader(said).ReadString('\n')
	require.NoError(t, err)
	require.Equal(t, "half way\n", line)
	mine := filepath.Join(folder, ".half-written-notes")
	require.NoError(t, os.WriteFile(mine, []byte("a file of the user's"), 0o600))

	swept, _, err := keep.Backup(context.Background(), data, filepath.Join(folder, "one.db"))
	require.NoError(t, err)
	assert.Empty(t, swept, "it is still being written")
	require.Len(t, halves(t, folder), 2)

	require.NoError(t, stuck.Process.Signal(syscall.SIGKILL))
	_ = stuck.Wait()
	require.Len(t, halves(t, folder), 2, "nobody cleans up after a kill")
	swept, census, err := keep.Backup(context.Background(), data, filepath.Join(folder, "two.db"))
	require.NoError(t, err)
	assert.Len(t, swept, 1)
	assert.Positive(t, census.Events)
	assert.Equal(t, []string{mine}, halves(t, folder), "no other file is touched")
}
