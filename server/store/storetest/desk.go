package storetest

import (
	"fmt"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/quiz"
)

func doc(kind quiz.DocKind, id string, rev uint64, body string) quiz.Doc {
	return quiz.Doc{Kind: kind, ID: id, Rev: rev, Body: quiz.Raw(body)}
}

func did(what string) quiz.Deed { return quiz.Deed{By: "Chief 1", Did: "saved", What: what} }

func keepsDocs(t *testing.T, open Open) {
	store, reopen := open(t)
	for _, kind := range quiz.DocKinds {
		require.NoError(t, store.Save(did("one"), doc(kind, "a", 0, `{"n":9007199254740993}`), doc(kind, "b", 0, `{}`)))
		require.NoError(t, store.Save(quiz.Deed{}, doc(kind, "a", 1, `{"n":2}`)))
		require.NoError(t, store.Save(did("gone"), doc(kind, "b", 1, "")))
	}
	store = reopen()
	for _, kind := range quiz.DocKinds {
		held, err := store.Doc(kind, "a")
		require.NoError(t, err)
		assert.Equal(t, doc(kind, "a", 2, `{"n":2}`), held)
		_, err = store.Doc(kind, "b")
		require.ErrorIs(t, err, quiz.ErrNoDoc)
		all, err := store.Docs(kind, "", 10)
		require.NoError(t, err)
		assert.Equal(t, []quiz.Doc{held}, all, "no kind sees another's")
	}
	deeds, err := store.Deeds(0, 100)
	require.NoError(t, err)
	require.Len(t, deeds, 2*len(quiz.DocKinds), "one without a word is not noted")
	assert.Equal(t, "gone", deeds[0].What, "newest first")
	assert.Positive(t, deeds[0].AtMS)
	assert.EqualValues(t, len(deeds), deeds[0].Seq)
	older, err := store.Deeds(deeds[2].Seq, 2)
	require.NoError(t, err)
	assert.Equal(t, deeds[3:5], older)
}

func refusesStaleDocs(t *testing.T, open Open) {
	store, _ := open(t)
	require.NoError(t, store.Save(did("made"), doc(quiz.SetDoc, "a", 0, `{"n":1}`)))
	require.NoError(t, store.Save(did("changed"), doc(quiz.SetDoc, "a", 1, `{"n":2}`)))
	for name, c := range map[string]struct {
		doc quiz.Doc
		err error
	}{
		"made again":      {doc(quiz.SetDoc, "a", 0, `{"n":3}`), quiz.ErrStale},
		"from an old one": {doc(quiz.SetDoc, "a", 1, `{"n":3}`), quiz.ErrStale},
		"of nothing":      {doc(quiz.SetDoc, "z", 1, `{"n":3}`), quiz.ErrNoDoc},
		"away, too late":  {doc(quiz.SetDoc, "a", 1, ""), quiz.ErrStale},
		"away, not there": {doc(quiz.SetDoc, "z", 0, ""), quiz.ErrNoDoc},
	} {
		require.ErrorIs(t, store.Save(did("never"), doc(quiz.SetDoc, "new", 0, `{}`), c.doc), c.err, name)
	}
	_, err := store.Doc(quiz.SetDoc, "new")
	require.ErrorIs(t, err, quiz.ErrNoDoc, "all or none")
	deeds, err := store.Deeds(0, 10)
	require.NoError(t, err)
	assert.Len(t, deeds, 2, "what was not done is not noted")

	var won sync.Map
	var all sync.WaitGroup
	for n := range 20 {
		all.Go(func() {
			if store.Save(quiz.Deed{}, doc(quiz.SetDoc, "a", 2, fmt.Sprintf(`{"n":%d}`, n))) == nil {
				won.Store(n, true)
			}
		})
	}
	all.Wait()
	winners := 0
	won.Range(func(any, any) bool { winners++; return true })
	assert.Equal(t, 1, winners, "of many changes at once one is taken")
}

func pagesDocs(t *testing.T, open Open) {
	store, _ := open(t)
	for n := range 7 {
		require.NoError(t, store.Save(quiz.Deed{}, doc(quiz.RosterDoc, ID(n), 0, `{}`)))
	}
	var ids []string
	for after := ""; ; {
		page, err := store.Docs(quiz.RosterDoc, after, 3)
		require.NoError(t, err)
		if len(page) == 0 {
			break
		}
		for _, d := range page {
			ids = append(ids, d.ID)
		}
		after = page[len(page)-1].ID
	}
	assert.Equal(t, []string{ID(0), ID(1), ID(2), ID(3), ID(4), ID(5), ID(6)}, ids)
}

func classed(t *testing.T, open Open, devices ...int) (quiz.Store, func() quiz.Store) {
	t.Helper()
	store, reopen := open(t)
	require.NoError(t, store.Save(quiz.Deed{}, doc(quiz.ClassDoc, ID(900), 0, `{}`), doc(quiz.ClassDoc, ID(901), 0, `{}`)))
	for _, n := range devices {
		_, err := store.Register(ID(n), Secret(n), "Engine")
		require.NoError(t, err)
	}
	return store, reopen
}

func line(event uint64, body string) quiz.Line {
	return quiz.Line{Class: ID(900), Event: event, Body: quiz.Raw(body)}
}

// An answer and its line in the class's log are one commit; sent again they are
// still one.
func commitsLines(t *testing.T, open Open) {
	store, reopen := classed(t, open, 1)
	first, err := store.AddLines(did("opened"), ID(900), quiz.Raw(`{"kind":"opened"}`), quiz.Raw(`{"kind":"locked"}`))
	require.NoError(t, err)
	assert.EqualValues(t, 1, first)
	for range 2 {
		acked, entered, err := store.Commit(ID(1), Answers(1, 1, 3), []quiz.Line{line(2, `{"person":1}`), line(3, `{"person":2}`), line(9, `{"person":3}`)})
		require.NoError(t, err)
		assert.EqualValues(t, 3, acked)
		if entered != nil {
			require.Len(t, entered, 2)
			assert.EqualValues(t, 3, entered[0].Seq)
			assert.EqualValues(t, 4, entered[1].Seq)
		}
		store = reopen()
	}
	lost := line(4, `{}`)
	lost.Class = ID(999)
	acked, entered, err := store.Commit(ID(1), Answers(1, 4, 4), []quiz.Line{lost})
	require.NoError(t, err, "an answer to a class that is not here is still kept")
	assert.EqualValues(t, 4, acked)
	assert.Empty(t, entered)
	_, entered, err = store.Commit(ID(1), Answers(1, 6, 6), []quiz.Line{line(6, `{}`)})
	require.ErrorIs(t, err, quiz.ErrGap)
	assert.Empty(t, entered)

	lines, err := store.Lines(ID(900), 0, 100)
	require.NoError(t, err)
	require.Len(t, lines, 4)
	for i, l := range lines {
		assert.EqualValues(t, i+1, l.Seq)
	}
	assert.Equal(t, `{"person":2}`, string(lines[3].Body))
	tail, err := store.Lines(ID(900), 3, 100)
	require.NoError(t, err)
	assert.Equal(t, lines[3:], tail)
	other, err := store.Lines(ID(901), 0, 100)
	require.NoError(t, err)
	assert.Empty(t, other)
	_, err = store.AddLines(quiz.Deed{}, ID(999), quiz.Raw(`{}`))
	require.ErrorIs(t, err, quiz.ErrNoDoc)
}

// Many devices commit to one class at once: no line is lost, doubled or out of
// its own device's order.
func manyCommitToOneClass(t *testing.T, open Open) {
	const devices, answers = 8, 25
	store, _ := classed(t, open, 1, 2, 3, 4, 5, 6, 7, 8)
	var all sync.WaitGroup
	for n := 1; n <= devices; n++ {
		all.Go(func() {
			for seq := uint64(1); seq <= answers; seq++ {
				for range 2 {
					_, _, err := store.Commit(ID(n), Answers(n, seq, seq), []quiz.Line{line(seq, fmt.Sprintf(`{"n":%d,"seq":%d}`, n, seq))})
					assert.NoError(t, err)
				}
			}
		})
	}
	all.Wait()
	lines, err := store.Lines(ID(900), 0, 1000)
	require.NoError(t, err)
	require.Len(t, lines, devices*answers)
	last := map[int]uint64{}
	for i, l := range lines {
		require.EqualValues(t, i+1, l.Seq)
		var n int
		var seq uint64
		_, err := fmt.Sscanf(string(l.Body), `{"n":%d,"seq":%d}`, &n, &seq)
		require.NoError(t, err)
		require.Equal(t, last[n]+1, seq)
		last[n] = seq
	}
}

func rekeys(t *testing.T, open Open) {
	store, reopen := classed(t, open, 1)
	_, err := store.Append(ID(1), Answers(1, 1, 3))
	require.NoError(t, err)
	moved, err := store.Rekey(ID(1), Secret(7))
	require.NoError(t, err)
	assert.Equal(t, "Engine", moved.CallSign)
	store = reopen()
	_, err = store.Authenticate(ID(1), Secret(1))
	require.ErrorIs(t, err, quiz.ErrWrongSecret, "the old phone is signed out")
	_, err = store.Authenticate(ID(1), Secret(7))
	require.NoError(t, err)
	requireHeld(t, store, 1, 3)
	_, err = store.Rekey(ID(2), Secret(2))
	require.ErrorIs(t, err, quiz.ErrUnknownDevice)
}

func erases(t *testing.T, open Open) {
	store, reopen := classed(t, open, 1, 2, 3)
	for n := 1; n <= 3; n++ {
		_, _, err := store.Commit(ID(n), Answers(n, 1, 3), []quiz.Line{line(1, fmt.Sprintf(`{"call_sign":"E%d"}`, n))})
		require.NoError(t, err)
	}
	require.NoError(t, store.SetCheck(ID(2), 2, quiz.Check{V: 1, State: quiz.CheckAgreed}))
	nameless := quiz.Line{Class: ID(900), Seq: 2, Body: quiz.Raw(`{"call_sign":"erased"}`)}
	require.ErrorIs(t, store.Erase(ID(2), []quiz.Line{nameless}, did("erase"), doc(quiz.RosterDoc, "r", 4, `{}`)), quiz.ErrNoDoc, "all or none")
	requireErased := func(n int) {
		_, err := store.Authenticate(ID(n), Secret(n))
		require.ErrorIs(t, err, quiz.ErrUnknownDevice)
		_, err = store.Records(ID(n), 0, 10)
		require.ErrorIs(t, err, quiz.ErrUnknownDevice)
	}
	requireHeldTwo(t, store)
	require.NoError(t, store.Erase(ID(2), []quiz.Line{nameless}, did("erase")))
	store = reopen()
	requireErased(2)
	requireHeld(t, store, 1, 3)
	requireHeld(t, store, 3, 3)
	lines, err := store.Lines(ID(900), 0, 10)
	require.NoError(t, err)
	assert.Equal(t, string(nameless.Body), string(lines[1].Body))
	assert.Equal(t, `{"call_sign":"E3"}`, string(lines[2].Body))
	waiting, err := store.Waiting("", 100)
	require.NoError(t, err)
	require.Len(t, waiting, 2, "nothing of the erased one is checked")
	assert.Equal(t, []string{ID(1), ID(3)}, []string{waiting[0].Device, waiting[1].Device})
	require.ErrorIs(t, store.Erase(ID(2), nil, did("erase")), quiz.ErrUnknownDevice)
	_, err = store.Register(ID(2), Secret(2), "Engine")
	require.NoError(t, err, "and may begin anew")
	requireHeld(t, store, 2, 0)
}

func requireHeldTwo(t *testing.T, store quiz.Store) {
	t.Helper()
	acked, err := store.Acked(ID(2))
	require.NoError(t, err)
	require.EqualValues(t, 3, acked)
}
