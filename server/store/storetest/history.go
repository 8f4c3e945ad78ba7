package storetest

import (
	"encoding/json"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/quiz"
)

func appends(t *testing.T, open Open) {
	store := registered(t, open, 1)
	acked, err := store.Acked(ID(1))
	require.NoError(t, err)
	assert.Zero(t, acked)
	for _, batch := range [][]quiz.Event{Answers(1, 1, 1), Answers(1, 2, 9), Answers(1, 10, 11)} {
		acked, err = store.Append(ID(1), batch)
		require.NoError(t, err)
		assert.Equal(t, batch[len(batch)-1].Seq, acked)
	}
	acked, err = store.Acked(ID(1))
	require.NoError(t, err)
	assert.EqualValues(t, 11, acked)
}

func sendsTwice(t *testing.T, open Open) {
	store := registered(t, open, 1)
	for range 3 {
		acked, err := store.Append(ID(1), Answers(1, 1, 4))
		require.NoError(t, err)
		assert.EqualValues(t, 4, acked)
	}
	acked, err := store.Append(ID(1), Answers(1, 2, 3))
	require.NoError(t, err)
	assert.EqualValues(t, 4, acked, "an old part sent again is acknowledged whole")
	requireHeld(t, store, 1, 4)
}

func overlaps(t *testing.T, open Open) {
	store := registered(t, open, 1)
	_, err := store.Append(ID(1), Answers(1, 1, 4))
	require.NoError(t, err)
	acked, err := store.Append(ID(1), Answers(1, 3, 6))
	require.NoError(t, err)
	assert.EqualValues(t, 6, acked)
	requireHeld(t, store, 1, 6)
}

func refusesGap(t *testing.T, open Open) {
	store := registered(t, open, 1)
	_, err := store.Append(ID(1), Answers(1, 1, 4))
	require.NoError(t, err)
	acked, err := store.Append(ID(1), Answers(1, 6, 7))
	require.ErrorIs(t, err, quiz.ErrGap)
	assert.EqualValues(t, 4, acked)

	torn := append(Answers(1, 5, 5), Answers(1, 7, 7)...)
	_, err = store.Append(ID(1), torn)
	require.ErrorIs(t, err, quiz.ErrGap)
	requireHeld(t, store, 1, 4)
}

func refusesFork(t *testing.T, open Open) {
	store := registered(t, open, 1)
	_, err := store.Append(ID(1), Answers(1, 1, 4))
	require.NoError(t, err)

	other := Answers(1, 3, 5)
	other[0].ID = ID(77)
	_, err = store.Append(ID(1), other)
	require.ErrorIs(t, err, quiz.ErrForked, "another event under a number already held")

	reused := Answers(1, 5, 6)
	reused[1].ID = Answer(1, 2).ID
	_, err = store.Append(ID(1), reused)
	require.ErrorIs(t, err, quiz.ErrForked, "an id already held under another number")

	twin := Answers(1, 5, 6)
	twin[1].ID = twin[0].ID
	_, err = store.Append(ID(1), twin)
	require.ErrorIs(t, err, quiz.ErrForked, "one id twice in a batch")
	requireHeld(t, store, 1, 4)
}

func refusesUnknown(t *testing.T, open Open) {
	store := registered(t, open, 1)
	_, err := store.Append(ID(2), Answers(2, 1, 1))
	require.ErrorIs(t, err, quiz.ErrUnknownDevice)
	_, err = store.Acked(ID(2))
	require.ErrorIs(t, err, quiz.ErrUnknownDevice)
	_, err = store.Records(ID(2), 0, 10)
	require.ErrorIs(t, err, quiz.ErrUnknownDevice)
}

func keepsBody(t *testing.T, open Open) {
	store := registered(t, open, 1)
	e := Answer(1, 1)
	e.Kind = quiz.NoteEvent
	e.Body = quiz.Raw(`{"seed":9007199254740993,"text":"smoke <b>low</b> & \u00e9 é","n":1e2,"nested":{"z":1,"a":2}}`)
	_, err := store.Append(ID(1), []quiz.Event{e})
	require.NoError(t, err)
	records, err := store.Records(ID(1), 0, 10)
	require.NoError(t, err)
	require.Len(t, records, 1)
	assert.Equal(t, string(e.Body), string(records[0].Body), "no digit is lost and no field moved")
	assert.Equal(t, e, records[0].Event)
	assert.Positive(t, records[0].ReceivedMS)
	assert.Nil(t, records[0].Check)
}

// manyAtOnce has every device's writers race: each sends the same history.
func manyAtOnce(t *testing.T, open Open) {
	const devices, writers, events = 8, 3, 40
	store, _ := open(t)
	var all sync.WaitGroup
	for n := 1; n <= devices; n++ {
		_, err := store.Register(ID(n), Secret(n), "Engine")
		require.NoError(t, err)
		for range writers {
			all.Go(func() {
				for seq := uint64(1); seq <= events; seq++ {
					acked, err := store.Append(ID(n), Answers(n, seq, seq))
					assert.NoError(t, err)
					assert.GreaterOrEqual(t, acked, seq)
				}
			})
		}
	}
	all.Wait()
	for n := 1; n <= devices; n++ {
		requireHeld(t, store, n, events)
	}
}

// requireHeld fails unless device n's history is exactly 1 to last.
func requireHeld(t *testing.T, store quiz.Store, n int, last uint64) {
	t.Helper()
	records := All(t, store, ID(n))
	require.Len(t, records, int(last))
	for i, r := range records {
		require.Equal(t, Answer(n, uint64(i)+1), r.Event)
		require.True(t, json.Valid(r.Body))
	}
}
