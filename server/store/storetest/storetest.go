// Package storetest holds the tests that every quiz.Store must pass, whatever
// engine it stands on.
package storetest

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/quiz"
)

// Open makes an empty store and returns it with a function that closes it and
// opens it again, as a restart would. It checks and closes in t.Cleanup.
type Open func(t *testing.T) (store quiz.Store, reopen func() quiz.Store)

// Run runs every test of the contract.
func Run(t *testing.T, open Open) {
	for _, c := range []struct {
		name string
		test func(*testing.T, Open)
	}{
		{"register and authenticate", registers},
		{"append in order", appends},
		{"send twice", sendsTwice},
		{"overlap", overlaps},
		{"gap", refusesGap},
		{"fork", refusesFork},
		{"unknown device", refusesUnknown},
		{"records in pages", pages},
		{"devices in pages", pagesDevices},
		{"body kept", keepsBody},
		{"checks", checks},
		{"devices take turns at being checked", takesTurns},
		{"records in pages of large ones", pagesBySize},
		{"restart", restarts},
		{"docs", keepsDocs},
		{"stale docs", refusesStaleDocs},
		{"docs in pages", pagesDocs},
		{"lines with events", commitsLines},
		{"many commit to one class", manyCommitToOneClass},
		{"another secret", rekeys},
		{"erase", erases},
		{"many at once", manyAtOnce},
		{"random histories", randomHistories},
		{"closed", refusesWhenClosed},
	} {
		t.Run(c.name, func(t *testing.T) { c.test(t, open) })
	}
}

// ID spells a number as a device's or an event's id.
func ID(n int) string { return fmt.Sprintf("%032x", n) }

// Secret spells a number as a device's secret.
func Secret(n int) string { return fmt.Sprintf("%064x", n) }

// Answer is an answer event of device n.
func Answer(n int, seq uint64) quiz.Event {
	return quiz.Event{
		V: quiz.EventVersion, ID: ID(n*1_000_000 + int(seq)), Device: ID(n), Seq: seq, Engine: "0.1.0",
		TClient: 1_790_000_000_000 + int64(seq), Kind: quiz.AnswerEvent, Body: quiz.Raw(`{"answer":{}}`),
	}
}

// Answers are the events of device n from one sequence number to another.
func Answers(n int, from, to uint64) []quiz.Event {
	var events []quiz.Event
	for seq := from; seq <= to; seq++ {
		events = append(events, Answer(n, seq))
	}
	return events
}

// Registered is a store that knows device n.
func registered(t *testing.T, open Open, n int) quiz.Store {
	t.Helper()
	store, _ := open(t)
	_, err := store.Register(ID(n), Secret(n), "Engine 1")
	require.NoError(t, err)
	return store
}

func registers(t *testing.T, open Open) {
	store, _ := open(t)
	first, err := store.Register(ID(1), Secret(1), "Engine 1")
	require.NoError(t, err)
	assert.Equal(t, "Engine 1", first.CallSign)
	assert.Positive(t, first.CreatedMS)

	again, err := store.Register(ID(1), Secret(1), "Engine 1 B")
	require.NoError(t, err)
	assert.Equal(t, "Engine 1 B", again.CallSign)
	assert.Equal(t, first.CreatedMS, again.CreatedMS)

	_, err = store.Register(ID(1), Secret(2), "Thief")
	require.ErrorIs(t, err, quiz.ErrWrongSecret)

	got, err := store.Authenticate(ID(1), Secret(1))
	require.NoError(t, err)
	assert.Equal(t, again, got)
	_, err = store.Authenticate(ID(1), Secret(2))
	require.ErrorIs(t, err, quiz.ErrWrongSecret)
	_, err = store.Authenticate(ID(1), "")
	require.ErrorIs(t, err, quiz.ErrWrongSecret)
	_, err = store.Authenticate(ID(2), Secret(2))
	require.ErrorIs(t, err, quiz.ErrUnknownDevice)
	_, err = store.Authenticate("not an id", Secret(2))
	require.ErrorIs(t, err, quiz.ErrUnknownDevice)
}

func restarts(t *testing.T, open Open) {
	store, reopen := open(t)
	_, err := store.Register(ID(1), Secret(1), "Engine 1")
	require.NoError(t, err)
	acked, err := store.Append(ID(1), Answers(1, 1, 5))
	require.NoError(t, err)
	require.EqualValues(t, 5, acked)

	store = reopen()
	_, err = store.Authenticate(ID(1), Secret(1))
	require.NoError(t, err)
	acked, err = store.Append(ID(1), Answers(1, 4, 7))
	require.NoError(t, err)
	assert.EqualValues(t, 7, acked)
	records := All(t, store, ID(1))
	require.Len(t, records, 7)
	for _, r := range records {
		assert.Equal(t, quiz.CheckWaiting, r.Check.State)
	}
}

func refusesWhenClosed(t *testing.T, open Open) {
	store := registered(t, open, 1)
	require.NoError(t, store.Ready())
	require.NoError(t, store.Close())
	require.ErrorIs(t, store.Ready(), quiz.ErrClosed)
	_, err := store.Append(ID(1), Answers(1, 1, 1))
	require.ErrorIs(t, err, quiz.ErrClosed)
}
