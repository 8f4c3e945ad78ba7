package storetest

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/quiz"
)

func pages(t *testing.T, open Open) {
	store := registered(t, open, 1)
	// Neighbours on both sides in the order of ids must never be read.
	for _, n := range []int{2, 3} {
		_, err := store.Register(ID(n), Secret(n), "Engine")
		require.NoError(t, err)
	}
	for _, n := range []int{1, 2, 3} {
		_, err := store.Append(ID(n), Answers(n, 1, 25))
		require.NoError(t, err)
	}
	var seqs []uint64
	for after := uint64(0); ; {
		page, err := store.Records(ID(2), after, 10)
		require.NoError(t, err)
		if len(page) == 0 {
			break
		}
		for _, r := range page {
			require.Equal(t, ID(2), r.Device)
			seqs = append(seqs, r.Seq)
		}
		after = page[len(page)-1].Seq
	}
	require.Len(t, seqs, 25)
	for i, seq := range seqs {
		assert.EqualValues(t, i+1, seq)
	}
}

func pagesDevices(t *testing.T, open Open) {
	store, _ := open(t)
	for n := 1; n <= 7; n++ {
		_, err := store.Register(ID(n), Secret(n), "Engine")
		require.NoError(t, err)
	}
	var ids []string
	for after := ""; ; {
		page, err := store.Devices(after, 3)
		require.NoError(t, err)
		if len(page) == 0 {
			break
		}
		for _, d := range page {
			ids = append(ids, d.ID)
		}
		after = page[len(page)-1].ID
	}
	assert.Equal(t, []string{ID(1), ID(2), ID(3), ID(4), ID(5), ID(6), ID(7)}, ids)
}

func checks(t *testing.T, open Open) {
	store := registered(t, open, 1)
	batch := Answers(1, 1, 3)
	batch[1].Kind = quiz.NoteEvent
	_, err := store.Append(ID(1), batch)
	require.NoError(t, err)
	waiting, err := store.Waiting("", 10)
	require.NoError(t, err)
	require.Equal(t, []quiz.Event{batch[0]}, waiting, "one of each device")

	check := quiz.Check{V: 1, State: quiz.CheckAgreed, Engine: "0.1.0", Content: "c1", Verdict: &quiz.Verdict{V: 1, Score: 0.75}}
	require.NoError(t, store.SetCheck(ID(1), 3, check))
	other := check
	other.State = quiz.CheckDiffers
	require.NoError(t, store.SetCheck(ID(1), 3, other), "a second check is ignored")
	require.NoError(t, store.SetCheck(ID(1), 2, check), "a note has no check")
	require.NoError(t, store.SetCheck(ID(1), 99, check), "nor has what is not there")

	records, err := store.Records(ID(1), 0, 10)
	require.NoError(t, err)
	require.Len(t, records, 3)
	assert.Equal(t, quiz.CheckWaiting, records[0].Check.State)
	assert.Nil(t, records[1].Check)
	assert.Equal(t, check, *records[2].Check)
	assert.Equal(t, batch[2].Body, records[2].Body, "the event itself is untouched")

	require.NoError(t, store.SetCheck(ID(1), 1, check))
	waiting, err = store.Waiting("", 10)
	require.NoError(t, err)
	assert.Empty(t, waiting, "notes are not checked")
}

// takesTurns has one device with many answers, first in the order of ids, among
// others with few: each gets its turn.
func takesTurns(t *testing.T, open Open) {
	store, _ := open(t)
	for n, answers := range map[int]uint64{1: 50, 2: 1, 3: 2} {
		_, err := store.Register(ID(n), Secret(n), "Engine")
		require.NoError(t, err)
		_, err = store.Append(ID(n), Answers(n, 1, answers))
		require.NoError(t, err)
	}
	turns := func(after string, limit int) (list []string) {
		waiting, err := store.Waiting(after, limit)
		require.NoError(t, err)
		for _, e := range waiting {
			require.EqualValues(t, 1, e.Seq, "the oldest of each")
			list = append(list, e.Device)
		}
		return list
	}
	assert.Equal(t, []string{ID(1), ID(2), ID(3)}, turns("", 10))
	assert.Equal(t, []string{ID(2), ID(3), ID(1)}, turns(ID(1), 10))
	assert.Equal(t, []string{ID(1), ID(2), ID(3)}, turns(ID(3), 10))
	assert.Equal(t, []string{ID(3)}, turns(ID(2), 1))
	_, err := store.Waiting("no id", 10)
	require.ErrorIs(t, err, quiz.ErrUnknownDevice)
}

// pagesBySize has events so large that a few of them fill a page.
func pagesBySize(t *testing.T, open Open) {
	store := registered(t, open, 1)
	const events, bytes = 50, 60 << 10
	for seq := uint64(1); seq <= events; seq++ {
		large := Answer(1, seq)
		large.Kind, large.Body = quiz.NoteEvent, quiz.Raw(`{"text":"`+strings.Repeat("x", bytes)+`"}`)
		_, err := store.Append(ID(1), []quiz.Event{large})
		require.NoError(t, err)
	}
	page, err := store.Records(ID(1), 0, events)
	require.NoError(t, err)
	assert.Len(t, page, quiz.PageBytes/bytes+1)
	assert.Len(t, All(t, store, ID(1)), events)
}

// All reads a device's whole history, page by page.
func All(t *testing.T, store quiz.Store, device string) (all []quiz.Record) {
	t.Helper()
	for after := uint64(0); ; after = all[len(all)-1].Seq {
		page, err := store.Records(device, after, 1000)
		require.NoError(t, err)
		if len(page) == 0 {
			return all
		}
		all = append(all, page...)
	}
}
