package serve_test

import (
	"encoding/json"
	"path/filepath"
	"strconv"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/quiz"
	"lintel/quiz/session"
	"lintel/server/class"
	"lintel/server/store"
	"lintel/server/store/storetest"
)

// Wrong, over and full: one reply, and no telling by the clock.
func TestRefusedJoinsReadAndTakeTheSame(t *testing.T) {
	s := start(t)
	b := s.chief()
	over, locked := b.opened(session.Led, 1), b.opened(session.Led, 1)
	over.act(session.Ended)
	locked.act(session.Locked, "on", true)
	old := b.opened(session.Led, 1)
	changed := *old.Door
	b.must("POST", "/classes/"+old.ID+"/code", map[string]any{"v": 1}, nil)
	ways := map[string]map[string]any{
		"a wrong token":   {"token": storetest.ID(1)},
		"a wrong code":    {"code": "3333-3333"},
		"no code":         {"code": ""},
		"an ended class":  {"token": over.Door.Token},
		"its code":        {"code": over.Door.Code},
		"a locked class":  {"token": locked.Door.Token},
		"a changed token": {"token": changed.Token},
		"a changed code":  {"code": changed.Code},
	}
	said := map[string]bool{}
	fastest := map[string]time.Duration{}
	for round := range 5 {
		for name, way := range ways {
			way["v"] = 1
			began := time.Now()
			got := over.enter(round+1, way, "Engine 1")
			took := time.Since(began)
			if held, ok := fastest[name]; !ok || took < held {
				fastest[name] = took
			}
			assert.Equal(t, 404, got.status, name)
			said[got.text] = true
		}
	}
	assert.Len(t, said, 1, "one reply for all")
	for name, took := range fastest {
		assert.GreaterOrEqual(t, took, 20*time.Millisecond, name)
		assert.Less(t, took, 60*time.Millisecond, name)
	}
	s.wait(class.OpenFor + time.Minute)
	assert.Equal(t, 404, old.join(1, "Engine 1").status, "a class is joined on its own day")
}

// A class that is full refuses like one that was never there. Control: one who is
// in it comes back by the same token.
func TestAFullClassReadsLikeNone(t *testing.T) {
	data := t.TempDir()
	s := startIn(t, data)
	l := s.chief().opened(session.Led, 1)
	require.NoError(t, s.Close())
	fillClass(t, data, l.ID)

	again := startIn(t, data)
	enter := func(n int, token string) (reply, time.Duration) {
		began := time.Now()
		got := again.post("/api/v1/join", map[string]any{"v": 1, "token": token, "call_signs": map[string]string{"a": "Engine"}}, as(n)...)
		return got, time.Since(began)
	}
	full, took := enter(session.MaxPeople+1, l.Door.Token)
	wrong, _ := enter(session.MaxPeople+1, storetest.ID(1))
	assert.Equal(t, 404, full.status, full.text)
	assert.Equal(t, wrong.text, full.text)
	assert.GreaterOrEqual(t, took, 20*time.Millisecond)
	got, _ := enter(session.MaxPeople, l.Door.Token)
	assert.Equal(t, 200, got.status, got.text)
}

// fillClass takes as many people into a class as it holds.
func fillClass(t *testing.T, data, id string) {
	t.Helper()
	kept, err := store.Open(filepath.Join(data, store.FileName), store.Options{})
	require.NoError(t, err)
	var bodies []quiz.Raw
	for n := 1; n <= session.MaxPeople; n++ {
		member := &session.Member{CallSign: "Engine " + strconv.Itoa(n), Device: storetest.ID(n), Place: session.FirstPlace}
		body, err := json.Marshal(session.Entry{V: session.Version, AtMS: 1_790_000_000_000, Kind: session.Joined, Member: member})
		require.NoError(t, err)
		bodies = append(bodies, quiz.Raw(body))
	}
	_, err = kept.AddLines(quiz.Deed{}, id, bodies...)
	require.NoError(t, err)
	require.NoError(t, kept.Close())
}

// A flood of guesses makes the code longer, and keeps nobody out: not by the
// token, not by the code on the wall, whatever the address.
func TestGuessingCodesKeepsNobodyOut(t *testing.T) {
	s := start(t)
	l := s.chief().opened(session.Led, 1)
	wall := l.look(session.Hello{Role: session.Projector, Key: l.Projector})
	require.Equal(t, 200, l.enter(1, map[string]any{"v": 1, "code": l.Door.Code}, "Engine 1").status)
	stop := make(chan struct{})
	var all sync.WaitGroup
	for w := range 40 {
		all.Go(func() {
			for n := 0; ; n++ {
				select {
				case <-stop:
					return
				default:
				}
				_, err := s.Classes().Find(class.Way{Code: "NOT" + strconv.Itoa(w) + "X" + strconv.Itoa(n)})
				assert.ErrorIs(t, err, class.ErrNoEntry)
			}
		})
	}
	honest := 2
	grown := ""
	for grown == "" {
		began := time.Now()
		require.Equal(t, 200, l.join(honest, "Engine "+strconv.Itoa(honest)).status)
		assert.Less(t, time.Since(began), time.Second)
		honest++
		select {
		case f := <-wall.frames:
			if f.Kind == session.DoorFrame && len(f.Door.Code) > len(l.Door.Code) {
				grown = f.Door.Code
			}
		case <-time.After(50 * time.Millisecond):
		}
		require.Less(t, honest, 2000, "the code never grew")
	}
	close(stop)
	all.Wait()
	assert.Len(t, grown, class.GrownLength+2, "with its dashes")
	assert.Equal(t, 404, l.enter(honest, map[string]any{"v": 1, "code": l.Door.Code}, "Engine").status, "the short code is over")
	assert.Equal(t, 200, l.enter(honest, map[string]any{"v": 1, "code": grown}, "Engine").status)
}
