package store_test

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/quiz"
	"lintel/server/store"
	"lintel/server/store/storetest"
)

func TestContract(t *testing.T) {
	storetest.Run(t, func(t *testing.T) (quiz.Store, func() quiz.Store) {
		path := filepath.Join(t.TempDir(), store.FileName)
		s := open(t, path, store.Options{})
		return s, func() quiz.Store {
			require.NoError(t, s.Close())
			s = open(t, path, store.Options{})
			return s
		}
	})
}

// open opens a store whose file is walked through when the test ends.
func open(t *testing.T, path string, opts store.Options) *store.Store {
	t.Helper()
	s, err := store.Open(path, opts)
	require.NoError(t, err)
	t.Cleanup(func() {
		assert.NoError(t, s.Close())
		_, err := store.CheckFile(path)
		assert.NoError(t, err)
	})
	return s
}

func TestManyDevicesAreRefused(t *testing.T) {
	s := open(t, filepath.Join(t.TempDir(), store.FileName), store.Options{MaxDevices: 5})
	register := func(n int) error {
		_, err := s.Register(storetest.ID(n), storetest.Secret(n), "Engine")
		return err
	}
	for n := 1; n <= 4; n++ {
		require.NoError(t, register(n))
	}
	require.ErrorIs(t, register(5), quiz.ErrManyDevices, "the last fifth is kept for those who join a class")
	_, err := s.Welcome(storetest.ID(6), storetest.Secret(6), "Engine")
	require.NoError(t, err)
	_, err = s.Welcome(storetest.ID(7), storetest.Secret(7), "Engine")
	require.ErrorIs(t, err, quiz.ErrManyDevices)
	_, err = s.Register(storetest.ID(2), storetest.Secret(2), "Truck")
	require.NoError(t, err, "a known device may still change its call sign")
}

// A device has one spelling. By another one it would be proved and yet be somebody
// else to all who keep something by its name: the number of its sockets, say.
func TestADeviceHasOneSpelling(t *testing.T) {
	s := open(t, filepath.Join(t.TempDir(), store.FileName), store.Options{})
	id := strings.Repeat("ab", 16)
	_, err := s.Register(id, storetest.Secret(1), "Engine")
	require.NoError(t, err)
	_, err = s.Authenticate(id, storetest.Secret(1))
	require.NoError(t, err)
	for _, other := range []string{strings.ToUpper(id), "A" + id[1:]} {
		_, err = s.Authenticate(other, storetest.Secret(1))
		require.ErrorIs(t, err, quiz.ErrUnknownDevice)
	}
}
