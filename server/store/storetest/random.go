package storetest

import (
	"math/rand/v2"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

	"lintel/quiz"
)

// randomHistories sends histories as bad networks do (batches lost, doubled,
// overlapping, out of turn, from a device restored to an older state) and
// restarts the store in between. A model that is a plain list says what must
// come of it. LINTEL_SEED repeats a run.
func randomHistories(t *testing.T, open Open) {
	seed := rand.Uint64()
	if text := os.Getenv("LINTEL_SEED"); text != "" {
		var err error
		seed, err = strconv.ParseUint(text, 10, 64)
		require.NoError(t, err)
	}
	t.Logf("LINTEL_SEED=%d", seed)
	chance := rand.New(rand.NewPCG(seed, 1))
	store, reopen := open(t)
	const devices, steps = 4, 400
	model := make([]uint64, devices+1) // how far each device's history is held
	for n := 1; n <= devices; n++ {
		_, err := store.Register(ID(n), Secret(n), "Engine")
		require.NoError(t, err)
	}
	for range steps {
		n := 1 + chance.IntN(devices)
		held := model[n]
		first := max(1, int64(held)+1+int64(chance.IntN(8))-5) // often an overlap, sometimes a gap
		batch := Answers(n, uint64(first), uint64(first)+chance.Uint64N(6))
		last := batch[len(batch)-1].Seq
		// A fork is another event under a number that is held already.
		forked := uint64(first) <= held && chance.IntN(10) == 0
		if forked {
			batch[0].ID = ID(500_000_000 + n)
		}
		acked, err := store.Append(ID(n), batch)
		switch {
		case uint64(first) > held+1:
			require.ErrorIs(t, err, quiz.ErrGap)
			require.Equal(t, held, acked)
		case forked:
			require.ErrorIs(t, err, quiz.ErrForked)
		default:
			require.NoError(t, err)
			model[n] = max(held, last)
			require.Equal(t, model[n], acked)
		}
		if chance.IntN(40) == 0 {
			store = reopen()
		}
	}
	for n := 1; n <= devices; n++ {
		requireHeld(t, store, n, model[n])
	}
}
