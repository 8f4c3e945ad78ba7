package serve_test

import (
	"encoding/json"
	"strconv"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"github.com/gorilla/websocket"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/quiz"
	"lintel/quiz/session"
	"lintel/server/store/storetest"
)

// Who holds the code of a locked class learns no more from it than from a wrong
// one: neither by what was registered on the way, nor by how the rest is refused.
func TestALockedClassGivesNothingAway(t *testing.T) {
	s := start(t)
	l := s.chief().opened(session.Led, 1)
	l.act(session.Locked, "on", true)
	wrong := l.enter(1, map[string]any{"v": 1, "code": "3333-3333"}, "Engine 1")
	assert.Equal(t, wrong, sameDate(wrong, l.enter(1, map[string]any{"v": 1, "code": l.Door.Code}, "Engine 1")))
	assert.Equal(t, 401, s.do("GET", "/api/v1/state", nil, as(1)...).status, "nobody was registered")

	unfit := map[string]any{"v": 1, "code": l.Door.Code, "call_signs": map[string]string{"a": "\u202e"}}
	assert.Equal(t, wrong.text, s.post("/api/v1/join", unfit, as(1)...).text, "a call sign that cannot be used")
	s.register(2)
	stolen := []string{"Authorization", "Device " + storetest.ID(2) + ":" + storetest.Secret(3)}
	assert.Equal(t, wrong.text, s.post("/api/v1/join", map[string]any{"v": 1, "code": l.Door.Code}, stolen...).text, "a wrong secret")
}

// sameDate is a reply with the headers of another, which tell the time.
func sameDate(of, got reply) reply {
	got.header = of.header
	return got
}

// invited makes another instructor.
func (b *boss) invited(role, callSign string) *boss {
	b.t.Helper()
	var made struct{ Code string }
	b.must("POST", "/instructors/invite", map[string]any{"v": 1, "role": role}, &made)
	other := &boss{server: b.server}
	other.must("POST", "/reset", map[string]any{"v": 1, "code": made.Code, "call_sign": callSign, "pass_phrase": phrase}, nil)
	return other
}

func (b *boss) id() string {
	b.t.Helper()
	var me struct{ ID string }
	b.must("GET", "/me", nil, &me)
	return me.ID
}

// A chief who is no chief any more has no invitations out.
func TestInvitationsEndWithTheirChief(t *testing.T) {
	for name, change := range map[string]map[string]any{
		"shut out": {"v": 1, "role": "chief", "shut_out": true},
		"demoted":  {"v": 1, "role": "instructor", "shut_out": false},
	} {
		b := start(t).chief()
		second := b.invited("chief", "Chief 2")
		var made struct{ Code string }
		second.must("POST", "/instructors/invite", map[string]any{"v": 1, "role": "chief"}, &made)
		b.must("PUT", "/instructors/"+second.id(), change, nil)
		got := (&boss{server: b.server}).call("POST", "/reset", map[string]any{"v": 1, "code": made.Code, "call_sign": "Chief 3", "pass_phrase": phrase})
		assert.Equal(t, 403, got.status, name)
	}
}

// A board shows nothing more once its instructor has signed out or was shut out.
func TestABoardEndsWithItsSignIn(t *testing.T) {
	b := start(t).chief()
	second := b.invited("instructor", "Instructor 2")
	l := b.opened(session.Led, 1)
	theirs := l.look(session.Hello{Role: session.Board}, second.cookies...)
	theirs.until(func(f session.Frame) bool { return f.Board != nil })
	b.must("PUT", "/instructors/"+second.id(), map[string]any{"v": 1, "role": "instructor", "shut_out": true}, nil)
	assert.True(t, theirs.ends(), "shut out")

	cookies := b.cookies
	own := l.look(session.Hello{Role: session.Board}, cookies...)
	own.until(func(f session.Frame) bool { return f.Board != nil })
	b.must("POST", "/signout", map[string]any{"v": 1}, nil)
	assert.True(t, own.ends(), "signed out")
	assert.True(t, l.look(session.Hello{Role: session.Board}, cookies...).ends(), "the old cookie opens no board")
}

func (v *viewer) ends() bool {
	for patience := time.After(5 * time.Second); ; {
		select {
		case <-v.frames:
		case <-v.closed:
			return true
		case <-patience:
			return false
		}
	}
}

// Only a phone is a device: whoever else names one does not put it in the room.
func TestAWallNamingADeviceIsNotThatDevice(t *testing.T) {
	l := start(t).chief().opened(session.Led, 1)
	require.Equal(t, 200, l.join(1, "Engine 1").status)
	wall := l.look(session.Hello{Role: session.Projector, Key: l.Projector, Device: storetest.ID(1)})
	wall.until(func(f session.Frame) bool { return f.Projector != nil })
	var got struct{ Class session.Listed }
	l.must("GET", "/classes/"+l.ID, nil, &got)
	assert.Zero(t, got.Class.Connected)
}

// What leaves the server with names on it is in the record of who did what.
func TestPapersOfAClassAreOnRecord(t *testing.T) {
	l := start(t).chief().opened(session.Led, 1)
	for _, paper := range []string{"csv", "pdf"} {
		require.Equal(t, 200, l.call("GET", "/classes/"+l.ID+"/report."+paper, nil).status)
	}
	assert.Equal(t, 2, strings.Count(l.call("GET", "/audit", nil).text, `"export_report"`))
}

// How long an answer took is what the phone says: on paper it is a number that a
// class can have.
func TestAPhoneThatTookForever(t *testing.T) {
	l := start(t).chief().opened(session.Led, 1)
	require.Equal(t, 200, l.join(1, "Engine 1").status)
	events := l.answers(1, "a", "s1", 3)
	events[0].Body = quiz.Raw(strings.Replace(string(events[0].Body), `"took_s":7`, `"took_s":1e300`, 1))
	require.Equal(t, 200, l.server.send(1, events).status)
	assert.Contains(t, l.call("GET", "/classes/"+l.ID+"/report.csv", nil).text, ",86400.0\r\n")
}

// What whoever leads notes is words on the board and on paper: nothing turns those
// after it around.
func TestANoteTurnsNoWordsAround(t *testing.T) {
	l := start(t).chief().opened(session.Led, 1)
	doubt := func(note string) reply {
		return l.do(map[string]any{"kind": "disagreed", "scene": "s1", "ask": "plane@door", "on": true, "note": note})
	}
	assert.Equal(t, 400, doubt("seen \u202e from the side").status)
	assert.Equal(t, 400, doubt(strings.Repeat("a", session.MaxNote+1)).status)
	assert.Equal(t, 200, doubt("seen\nfrom the side").status)
	got := l.call("POST", "/sets", map[string]any{"v": 1, "title": "Mine", "scenes": []map[string]any{{"family": "f", "seed": 1, "look_s": 0, "note": "\x1b[31m"}}})
	assert.Equal(t, 400, got.status, got.text)
}

// A phone leads in the name of the instructor who handed it the class, and as long
// as that one may.
func TestALeadEndsWithItsInstructor(t *testing.T) {
	b := start(t).chief()
	second := b.invited("instructor", "Instructor 2")
	l := b.opened(session.Led, 1)
	var offer struct{ Token string }
	second.must("POST", "/classes/"+l.ID+"/lead", map[string]any{"v": 1}, &offer)
	var taken struct{ Key string }
	(&boss{server: b.server}).must("POST", "/lead", map[string]any{"v": 1, "token": offer.Token}, &taken)
	act := map[string]any{"v": 1, "act": map[string]any{"kind": session.Ended}}
	require.Equal(t, 200, b.post("/api/v1/classes/"+l.ID+"/do", act, "Authorization", "Lead "+taken.Key).status)
	assert.Contains(t, b.call("GET", "/audit", nil).text, `"by":"phone of Instructor 2","did":"ended"`)

	look := l.look(session.Hello{Role: session.Lead, Key: taken.Key})
	look.until(func(f session.Frame) bool { return f.Board != nil })
	b.must("PUT", "/instructors/"+second.id(), map[string]any{"v": 1, "role": "instructor", "shut_out": true}, nil)
	assert.True(t, look.ends(), "its socket ends")
	assert.Equal(t, 401, b.do("GET", "/api/v1/classes/"+l.ID, nil, "Authorization", "Lead "+taken.Key).status)
}

// A phone whose record was moved to another or erased has no socket left.
func TestSocketsEndWithTheirSecret(t *testing.T) {
	s := start(t)
	l := s.chief().opened(session.Led, 1)
	for n, end := range map[int]func(){
		1: func() {
			var code struct{ Token string }
			got := s.post("/api/v1/devices/move", map[string]any{"v": 1}, as(1)...)
			require.NoError(t, json.Unmarshal([]byte(got.text), &code), got.text)
			require.Equal(t, 200, s.post("/api/v1/devices/claim", map[string]any{"v": 1, "token": code.Token, "secret": storetest.Secret(9)}).status)
		},
		2: func() { require.Equal(t, 204, s.do("DELETE", "/api/v1/devices", nil, as(2)...).status) },
	} {
		require.Equal(t, 200, l.join(n, "Engine "+strconv.Itoa(n)).status)
		phone := l.look(phoneHello(n, 0))
		phone.phone(session.Gather)
		own, _, err := websocket.DefaultDialer.Dial("ws"+strings.TrimPrefix(s.url, "http")+"/api/v1/live", nil)
		require.NoError(t, err)
		require.NoError(t, own.WriteJSON(map[string]string{"device": storetest.ID(n), "secret": storetest.Secret(n)}))
		_, _, err = own.ReadMessage()
		require.NoError(t, err)
		end()
		assert.True(t, phone.ends(), "the class's, %d", n)
		require.NoError(t, own.SetReadDeadline(time.Now().Add(5*time.Second)))
		for err == nil {
			_, _, err = own.ReadMessage()
		}
		assert.True(t, websocket.IsCloseError(err, websocket.ClosePolicyViolation), "its own, %d: %v", n, err)
	}
}

// Strangers who fill the disk fill it up to what is kept for classes: those in one
// go on. Control: with room, or once the class is over, all are alike.
func TestTheLastOfTheDiskIsForClasses(t *testing.T) {
	var free atomic.Uint64
	s := startWith(t, t.TempDir(), func(c *configuration) { c.Free = func() (uint64, bool) { return free.Load(), true } })
	l := s.chief().opened(session.Led, 1)
	require.Equal(t, 200, l.join(1, "Engine 1").status)
	l.act(session.Started)
	l.step(session.Commit, "s1")
	s.register(2)
	free.Store(1 << 40)
	require.Equal(t, 200, s.send(2, storetest.Answers(2, 1, 1)).status)
	free.Store(100 << 20)
	refused := s.send(2, storetest.Answers(2, 2, 2))
	assert.Equal(t, 507, refused.status)
	assert.Contains(t, refused.sentence(t), "nothing was stored")
	assert.Equal(t, 200, l.commit(1, "a", "s1", 3).status)
	l.act(session.Ended)
	assert.Equal(t, 507, s.send(1, storetest.Answers(1, 2, 2)).status)
	free.Store(1 << 40)
	assert.Equal(t, 200, s.send(2, storetest.Answers(2, 2, 2)).status, "kept by the phone, and sent again")
}
