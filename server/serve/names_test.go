package serve_test

import (
	"encoding/json"
	"path/filepath"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/quiz"
	"lintel/quiz/session"
	"lintel/server/class"
	"lintel/server/store"
	"lintel/server/store/storetest"
)

// A call sign is one person's in a class that is going on, however it is written.
// Control: the one who has it joins again, and one who was removed leaves theirs.
func TestACallSignIsOnePersonsInAClass(t *testing.T) {
	s := start(t)
	b := s.chief()
	l := b.opened(session.Led, 1)
	require.Equal(t, 200, l.join(1, "Kestrel", "Ruff").status)
	for _, sign := range []string{"Kestrel", "kestrel", " KESTREL ", "ruff"} {
		got := l.join(2, sign)
		require.Equal(t, 409, got.status, got.text)
		assert.Contains(t, got.text, `"code":"sign_taken"`)
		assert.Contains(t, got.text, "choose another")
	}
	require.Equal(t, 409, l.join(2, "Dotterel", "Kestrel").status, "nor as the second of a phone")
	require.Equal(t, 409, l.join(2, "Dotterel", "dotterel").status, "nor twice on one phone")
	state := func() session.State {
		now, err := s.Classes().State(l.ID)
		require.NoError(t, err)
		return now
	}
	assert.Len(t, state().People, 2, "nobody came in by half")
	require.Equal(t, 200, l.join(1, "Kestrel", "Ruff").status, "the same phone again")
	require.Equal(t, 200, l.join(2, "Dotterel").status)
	assert.Equal(t, 200, b.opened(session.Led, 1).join(2, "Kestrel").status, "in another class it is free")

	assert.Equal(t, 409, l.do(map[string]any{"kind": "renamed", "person": 3, "call_sign": "Kestrel"}).status)
	l.act(session.Renamed, "person", 3, "call_sign", "DOTTEREL")
	sheet := map[string]any{"kind": "sheet", "call_sign": "Kestrel", "scene": "s1", "replies": []map[string]any{{"ask": "level:volume@door", "level": 3}, {"ask": "plane@door", "unsure": true}}}
	assert.Equal(t, 409, l.do(sheet).status, "a sheet of somebody new is not put down to one with a phone")

	l.act(session.Removed, "person", 1, "on", true)
	require.Equal(t, 200, l.join(3, "Kestrel").status)
	assert.Equal(t, 409, l.do(map[string]any{"kind": "removed", "person": 1, "on": false}).status, "back only under another call sign")
	l.act(session.Renamed, "person", 1, "call_sign", "Kestrel 2")
	l.act(session.Removed, "person", 1, "on", false)
	assert.Equal(t, 4, func() int { now := state(); return now.Present() }())
}

// Of many who choose one call sign at the same moment one gets it; and one who
// presses many times gets it once.
func TestOneOfManyAtTheSameMoment(t *testing.T) {
	s := start(t)
	b := s.chief()
	for range 10 {
		l := b.opened(session.Led, 1)
		var all sync.WaitGroup
		var mu sync.Mutex
		got := map[int]int{}
		for n := range 8 {
			all.Go(func() {
				status := l.join(n+1, "Kestrel").status
				mu.Lock()
				defer mu.Unlock()
				got[status]++
			})
		}
		all.Wait()
		assert.Equal(t, map[int]int{200: 1, 409: 7}, got)
		for range 8 {
			all.Go(func() { assert.Equal(t, 200, l.join(9, "Ruff").status) })
		}
		all.Wait()
		now, err := s.Classes().State(l.ID)
		require.NoError(t, err)
		assert.Len(t, now.People, 2)
	}
}

// A log from before call signs were one person's is read as it was: its people keep
// their numbers.
func TestAnOldLogMayHoldTwo(t *testing.T) {
	data := t.TempDir()
	s := startIn(t, data)
	l := s.chief().opened(session.Led, 1)
	require.NoError(t, s.Close())
	kept, err := store.Open(filepath.Join(data, store.FileName), store.Options{})
	require.NoError(t, err)
	var bodies []quiz.Raw
	for n := 1; n <= 2; n++ {
		member := &session.Member{CallSign: "Kestrel", Device: storetest.ID(n), Place: session.FirstPlace}
		body, err := json.Marshal(session.Entry{V: session.Version, AtMS: 1_790_000_000_000, Kind: session.Joined, Member: member})
		require.NoError(t, err)
		bodies = append(bodies, quiz.Raw(body))
	}
	_, err = kept.AddLines(quiz.Deed{}, l.ID, bodies...)
	require.NoError(t, err)
	require.NoError(t, kept.Close())

	again := startIn(t, data)
	now, err := again.Classes().State(l.ID)
	require.NoError(t, err)
	require.Len(t, now.People, 2)
	assert.Equal(t, now.People[0].CallSign, now.People[1].CallSign)
}

// A place of the roster that is claimed anew from another phone carries on there,
// under its call sign, with what it committed, even while the class is locked; the
// old phone is told that it is out. One without a place who chose the call sign of
// a place makes way for its owner.
func TestAPlaceClaimedAnewCarriesOn(t *testing.T) {
	data := t.TempDir()
	s := startIn(t, data)
	b := s.chief()
	var made struct{ Roster quiz.Roster }
	b.must("POST", "/rosters", map[string]any{"v": 1, "title": "B shift", "csv": "call_sign,personnel\nGodwit,1\nKnot,2\n"}, &made)
	claim := func(n, seat int) {
		t.Helper()
		var code struct{ Token string }
		b.must("POST", "/rosters/"+made.Roster.ID+"/seats/"+made.Roster.Seats[seat].ID+"/claim", map[string]any{"v": 1}, &code)
		s.register(n)
		require.Equal(t, 200, s.post("/api/v1/claim", map[string]any{"v": 1, "token": code.Token, "place": "a"}, as(n)...).status)
	}
	l := b.opened(session.Led, 1, "roster", made.Roster.ID)
	claim(1, 0)
	require.Equal(t, 200, l.join(1, "whatever").status)
	require.Equal(t, 200, l.join(2, "Knot").status, "no place, but nobody has come for it yet")
	l.act(session.Started)
	l.step(session.Commit, "s1")
	require.Equal(t, 200, l.commit(1, "a", "s1", 3).status)
	old := l.look(phoneHello(1, 0))
	old.until(func(f session.Frame) bool { return f.Kind == session.PlacesFrame && len(f.Places) == 1 })
	l.act(session.Locked, "on", true)
	assert.Equal(t, 404, l.join(3, "Godwit").status, "a stranger learns nothing of a locked class")

	claim(3, 0)
	got := l.join(3, "Godwit")
	require.Equal(t, 200, got.status, got.text)
	assert.Contains(t, got.text, `"person":1`)
	old.until(func(f session.Frame) bool { return f.Kind == session.PlacesFrame && len(f.Places) == 0 })
	now := func() session.State {
		state, err := s.Classes().State(l.ID)
		require.NoError(t, err)
		return state
	}
	state := now()
	require.Len(t, state.People, 2)
	assert.Equal(t, "Godwit", state.People[0].CallSign)
	assert.Equal(t, []string{"s1"}, state.PlaceViews(storetest.ID(3))[0].Committed)
	require.Equal(t, 200, l.commit(1, "a", "s1", 0).status, "what the old phone still sends is kept")
	state = now()
	assert.Equal(t, 1, state.Committed("s1"), "and not entered")

	l.act(session.Locked, "on", false)
	claim(4, 1)
	require.Equal(t, 200, l.join(4, "whatever").status)
	state = now()
	assert.Equal(t, "Knot 2", state.People[1].CallSign)
	assert.Equal(t, "Knot", state.People[2].CallSign)

	// Erased from the new phone, nothing of the person is left in the class's log.
	require.Equal(t, 204, s.do("DELETE", "/api/v1/devices", nil, as(3)...).status)
	lines, err := s.Classes().Store.Lines(l.ID, 0, 1000)
	require.NoError(t, err)
	for _, line := range lines {
		assert.NotContains(t, string(line.Body), "Godwit")
		assert.NotContains(t, string(line.Body), storetest.ID(3))
	}
	require.NoError(t, s.Close())
	again := startIn(t, data)
	state, err = again.Classes().State(l.ID)
	require.NoError(t, err)
	require.Len(t, state.People, 3, "nobody's number has changed")
	assert.Equal(t, []string{class.Erased, "Knot 2", "Knot"}, []string{state.People[0].CallSign, state.People[1].CallSign, state.People[2].CallSign})
}
