package serve_test

import (
	"encoding/json"
	"net/http"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/gorilla/websocket"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/quiz"
	"lintel/quiz/session"
	"lintel/server/class"
	"lintel/server/store"
	"lintel/server/store/storetest"
)

// A class from its opening to its papers, with two people on one phone, a phone
// that drops, and one that was never registered before it joined.
func TestAClassFromBeginningToEnd(t *testing.T) {
	s := start(t)
	l := s.chief().opened(session.Led, 2)
	board := l.look(session.Hello{Role: session.Board}, l.cookies...)
	wall := l.look(session.Hello{Role: session.Projector, Key: l.Projector})
	door := wall.until(func(f session.Frame) bool { return f.Kind == session.DoorFrame }).Door
	assert.Equal(t, l.Door, door)

	s.register(1)
	require.Equal(t, 200, l.join(1, "Engine 1", "Engine 2").status)
	got := l.enter(2, map[string]any{"v": 1, "code": strings.ToLower(l.Door.Code)}, "Truck 7")
	require.Equal(t, 200, got.status, got.text)
	assert.Equal(t, got.text, l.enter(2, map[string]any{"v": 1, "code": l.Door.Code}, "Truck 7").text, "joining again changes nothing")
	phone := l.look(phoneHello(1, 0))
	places := phone.until(func(f session.Frame) bool { return f.Kind == session.PlacesFrame }).Places
	require.Len(t, places, 2)
	here := board.until(func(f session.Frame) bool { return f.Kind == session.HereFrame && len(f.Here) == 2 })
	assert.Equal(t, []int{1, 2}, here.Here)

	l.act(session.Started)
	view, seq := phone.phone(session.Watch)
	assert.Equal(t, uint64(1), view.Scene.Seed)
	assert.EqualValues(t, 20_000, view.Scene.LookUntil-view.Scene.LookFrom)
	phone.ws.Close() // the phone drops, misses a step and commits all the same
	board.until(func(f session.Frame) bool { return f.Kind == session.HereFrame && len(f.Here) == 0 })
	l.step(session.Commit, "s1")
	for place, volume := range map[string]int{"a": 3, "b": 1} {
		require.Equal(t, 200, l.commit(1, place, "s1", volume).status)
	}
	require.Equal(t, 200, l.commit(2, "a", "s1", 0).status)
	phone = l.look(phoneHello(1, seq))
	_, after := phone.phone(session.Commit)
	assert.Greater(t, after, seq, "it comes back where the class is")
	own := phone.until(func(f session.Frame) bool { return f.Kind == session.PlacesFrame }).Places
	assert.Equal(t, []string{"s1"}, own[0].Committed)

	full := board.board(func(b *session.BoardView) bool { return b.Scenes[0].Spread != nil && b.Scenes[0].Spread.Marks == 3 })
	assert.Equal(t, "volume", full.Misread.Cue)
	assert.Equal(t, session.TooLight, full.Misread.Way)
	assert.Equal(t, "g", full.Suggest.Family)
	l.step(session.Compare, "s1")
	shown := wall.until(func(f session.Frame) bool { return f.Projector != nil && f.Projector.Compare != nil }).Projector
	assert.Equal(t, &session.Apart{Low: "0", LowN: 1, High: "3", HighN: 1}, shown.Compare.Asks[0].Apart)
	l.step(session.Cutaway, "s1")
	view, _ = phone.phone(session.Cutaway)
	assert.Equal(t, 3, *view.Compare.Asks[0].Truth[0].Level)

	l.act("sheet", "call_sign", "Rescue 4", "scene", "s1", "replies", []map[string]any{{"ask": "level:volume@door", "level": 3}, {"ask": "plane@door", "unsure": true}})
	l.act(session.Disagreed, "scene", "s1", "ask", "plane@door", "on", true, "note", "seen from the side")
	l.act(session.Ended)
	_, _ = phone.phone(session.Over)
	var report struct{ Report session.Report }
	l.must("GET", "/classes/"+l.ID+"/report", nil, &report)
	require.Len(t, report.Report.People, 4)
	assert.Equal(t, 4, report.Report.Scenes[0].Spread.Marks)
	assert.Equal(t, 1, report.Report.Scenes[0].Spread.Sheets)
	assert.Equal(t, "Rescue 4", report.Report.People[3].CallSign)
	table := l.call("GET", "/classes/"+l.ID+"/report.csv", nil)
	assert.Contains(t, table.text, "TRAINING, NOT AN INCIDENT")
	assert.Contains(t, table.text, "Truck 7,3,1,said: family/f/title,f,1,level:volume@door,volume,0,3,0.7500,-3,0,0,0,0,,7.0\r\n")
	paper := l.call("GET", "/classes/"+l.ID+"/report.pdf", nil)
	assert.Equal(t, "application/pdf", paper.header.Get("Content-Type"))
	assert.True(t, strings.HasPrefix(paper.text, "%PDF-"))
	assert.Equal(t, 200, l.call("GET", "/classes/"+l.ID+"/report.pdf?east_min=-210", nil).status)
	for _, wrong := range []string{"841", "-841", "2.5", "Madrid"} {
		got := l.call("GET", "/classes/"+l.ID+"/report.pdf?east_min="+wrong, nil)
		assert.Equal(t, 400, got.status, wrong)
		assert.Contains(t, got.sentence(t), "east_min")
	}
	for point, status := range map[string]int{",": 200, ".": 200, "%3B": 400, "%2C%2C": 400} {
		assert.Equal(t, status, l.call("GET", "/classes/"+l.ID+"/report.pdf?language=es&point="+point, nil).status, point)
	}
	var person struct{ Person session.PersonReport }
	l.must("GET", "/classes/"+l.ID+"/people/2", nil, &person)
	assert.Equal(t, 1, *person.Person.Answers[0].Parts[0].Given.Level)

	records := s.do("GET", "/api/v1/records", nil, as(2)...)
	assert.Contains(t, records.text, l.ID, "the answer stands in the person's own log too")
	assert.Equal(t, 404, l.join(3, "Late").status, "an ended class lets nobody in")
}

// What the phone showed counts for nothing, and what does not fit is kept as an
// event and left out of the class.
func TestOnlyWhatFitsIsEntered(t *testing.T) {
	s := start(t)
	l := s.chief().opened(session.Led, 1)
	for n := 1; n <= 2; n++ {
		require.Equal(t, 200, l.join(n, "Engine "+strconv.Itoa(n)).status)
	}
	s.register(3)
	spoil := func(n int, change func(*quiz.AnswerBody)) {
		events := l.answers(n, "a", "s1", 0)
		var body quiz.AnswerBody
		require.NoError(t, json.Unmarshal(events[0].Body, &body))
		change(&body)
		text, err := json.Marshal(body)
		require.NoError(t, err)
		events[0].Body = quiz.Raw(text)
		require.Equal(t, 200, s.send(n, events).status, "every event is kept")
	}
	spoil(1, func(b *quiz.AnswerBody) { b.Class.Place = "b" })
	spoil(1, func(b *quiz.AnswerBody) { b.Class.Scene = "s9" })
	spoil(1, func(b *quiz.AnswerBody) { b.Class.ID = storetest.ID(5) })
	spoil(1, func(b *quiz.AnswerBody) { b.Answer.Seed = 99 })
	spoil(1, func(b *quiz.AnswerBody) { b.Answer.Engine = "0.0.9" })
	spoil(1, func(b *quiz.AnswerBody) {
		b.Answer.Replies = b.Answer.Replies[:0]
		b.Answer.Replies = append(b.Answer.Replies, quiz.Reply{Ask: "x"})
	})
	spoil(3, func(*quiz.AnswerBody) {}) // not in the class
	require.Equal(t, 200, l.commit(1, "a", "s1", 3).status)
	require.Equal(t, 200, l.commit(1, "a", "s1", 0).status, "a second answer is kept and does not count")
	require.Equal(t, 200, l.commit(2, "a", "s1", 2).status)
	state, err := s.Classes().State(l.ID)
	require.NoError(t, err)
	assert.Equal(t, 2, state.Committed("s1"))
	mark, _ := state.MarkOf("s1", 1)
	assert.InDelta(t, 1, mark.Score, 1e-12)
	mark, _ = state.MarkOf("s1", 2)
	assert.InDelta(t, 1-0.25/2, mark.Score, 1e-12, "judged here, not by the phone, which said 1")
}

// Sent again, an answer is one answer; and the state after a restart is the state
// before it, with everybody where they were.
func TestARestartLosesNothingOfAClass(t *testing.T) {
	data := t.TempDir()
	s := startIn(t, data)
	chief := s.chief()
	l := chief.opened(session.Led, 2)
	for n := 1; n <= 20; n++ {
		require.Equal(t, 200, l.join(n, "Engine "+strconv.Itoa(n)).status)
	}
	l.act(session.Started)
	for n := 1; n <= 20; n++ {
		events := l.answers(n, "a", "s1", n%5)
		for range 3 {
			require.Equal(t, 200, s.send(n, events).status)
		}
	}
	before, err := s.Classes().State(l.ID)
	require.NoError(t, err)
	require.Equal(t, 20, before.Committed("s1"))
	assert.EqualValues(t, 1+20+1+20, before.Seq, "no entry twice")
	phone := l.look(phoneHello(7, 0))
	_, seq := phone.phone(session.Watch)
	require.NoError(t, s.Close())
	var closed *websocket.CloseError
	require.ErrorAs(t, <-phone.closed, &closed)
	assert.Equal(t, websocket.CloseGoingAway, closed.Code)

	again := startIn(t, data)
	after, err := again.Classes().State(l.ID)
	require.NoError(t, err)
	assert.Equal(t, before.BoardView(nil), after.BoardView(nil))
	back := &lesson{boss: &boss{server: again, cookies: chief.cookies}, Listed: l.Listed, seq: l.seq}
	phone = back.look(phoneHello(7, seq))
	first := phone.until(func(f session.Frame) bool { return f.Kind == session.ViewFrame || f.Kind == session.CurrentFrame })
	assert.GreaterOrEqual(t, first.Seq, seq)
	back.step(session.Commit, "s1")
	_, next := phone.phone(session.Commit)
	assert.Greater(t, next, first.Seq)
	assert.Equal(t, 200, back.join(7, "Engine 7").status, "the code and the token live on")
}

// One view in flight, newest wins: a viewer that comes back is told only what it
// does not hold.
func TestAViewerIsToldOnlyWhatItDoesNotHold(t *testing.T) {
	s := start(t)
	l := s.chief().opened(session.Led, 1)
	require.Equal(t, 200, l.join(1, "Engine 1").status)
	phone := l.look(phoneHello(1, 0))
	_, seq := phone.phone(session.Gather)
	phone.ws.Close()
	phone = l.look(phoneHello(1, seq))
	first := phone.until(func(f session.Frame) bool { return f.Kind != session.PlacesFrame })
	assert.Equal(t, session.CurrentFrame, first.Kind)
	assert.Equal(t, seq, first.Seq)

	for range 40 { // within an instructor's own burst of requests
		l.act(session.Locked, "on", true)
		l.act(session.Locked, "on", false)
	}
	l.act(session.Started)
	_, last := phone.phone(session.Watch)
	assert.Less(t, len(phone.frames), 40)
	assert.Greater(t, last, seq)
}

// A phone that reads nothing holds up neither the class nor anybody in it.
func TestAPhoneThatDoesNotReadHoldsNobodyUp(t *testing.T) {
	s := start(t)
	l := s.chief().opened(session.Led, 1)
	for n := 1; n <= 2; n++ {
		require.Equal(t, 200, l.join(n, "Engine "+strconv.Itoa(n)).status)
	}
	stuck := l.dial()
	require.NoError(t, stuck.ws.WriteJSON(phoneHello(1, 0)))
	good := l.look(phoneHello(2, 0))
	good.phone(session.Gather)
	var slowest time.Duration
	for n := range 30 {
		began := time.Now()
		l.act(session.Locked, "on", n%2 == 0)
		slowest = max(slowest, time.Since(began))
		good.until(func(f session.Frame) bool { return f.Phone != nil && f.Phone.Locked == (n%2 == 0) })
	}
	assert.Less(t, slowest, time.Second)
}

func TestWhoMayLook(t *testing.T) {
	s := start(t)
	l := s.chief().opened(session.Led, 1)
	require.Equal(t, 200, l.join(1, "Engine 1").status)
	s.register(2)
	for name, hello := range map[string]session.Hello{
		"a stranger's phone":     phoneHello(2, 0),
		"a wrong secret":         {Role: session.Phone, Device: storetest.ID(1), Secret: storetest.Secret(2)},
		"a board without cookie": {Role: session.Board},
		"a wrong projector":      {Role: session.Projector, Key: storetest.ID(3)},
		"no projector":           {Role: session.Projector},
		"a wrong lead":           {Role: session.Lead, Key: storetest.ID(3) + storetest.Secret(3)},
		"nobody":                 {},
	} {
		t.Run(name, func(t *testing.T) {
			v := l.look(hello)
			var closed *websocket.CloseError
			require.ErrorAs(t, <-v.closed, &closed)
			assert.Equal(t, websocket.ClosePolicyViolation, closed.Code)
			assert.Empty(t, v.frames)
		})
	}
	header := http.Header{"Origin": {"https://elsewhere.example"}}
	_, got, err := websocket.DefaultDialer.Dial("ws"+strings.TrimPrefix(s.url, "http")+"/api/v1/classes/"+l.ID+"/live", header)
	require.ErrorIs(t, err, websocket.ErrBadHandshake)
	assert.Equal(t, 403, got.StatusCode)
	talker := l.look(phoneHello(1, 0))
	talker.phone(session.Gather)
	require.NoError(t, talker.ws.WriteMessage(websocket.TextMessage, []byte(`{"and":"another thing"}`)))
	var closed *websocket.CloseError
	require.ErrorAs(t, <-talker.closed, &closed)
	assert.Equal(t, websocket.ClosePolicyViolation, closed.Code)
}

// The laptop hands a class to a phone, on plain http and under another name.
func TestAPhoneTakesTheLead(t *testing.T) {
	s := start(t)
	l := s.chief().opened(session.Led, 1)
	other := s.opened2(l)
	offer := func() (token string) {
		var offered struct{ Token string }
		l.must("POST", "/classes/"+l.ID+"/lead", map[string]any{"v": 1}, &offered)
		return offered.Token
	}
	token := offer()
	far := []string{"Host", "192.168.1.5:8080"}
	got := s.post("/api/v1/lead", map[string]any{"v": 1, "token": token}, far...)
	require.Equal(t, 200, got.status, got.text)
	var lead struct{ Class, Key string }
	require.NoError(t, json.Unmarshal([]byte(got.text), &lead))
	assert.Equal(t, l.ID, lead.Class)
	assert.Equal(t, 403, s.post("/api/v1/lead", map[string]any{"v": 1, "token": token}, far...).status, "once")
	late := offer()
	s.wait(61 * time.Second)
	assert.Equal(t, 403, s.post("/api/v1/lead", map[string]any{"v": 1, "token": late}, far...).status, "for a minute")

	by := append([]string{"Authorization", "Lead " + lead.Key}, far...)
	start := map[string]any{"v": 1, "act": map[string]any{"kind": "started"}}
	view := l.look(session.Hello{Role: session.Lead, Key: lead.Key})
	view.board(func(*session.BoardView) bool { return true })
	assert.Equal(t, 200, s.post("/api/v1/classes/"+l.ID+"/do", start, by...).status)
	view.board(func(b *session.BoardView) bool { return b.Step == session.Watch })
	assert.Equal(t, 401, s.post("/api/v1/classes/"+other.ID+"/do", start, by...).status, "this one class only")
	assert.Equal(t, 403, s.do("GET", "/api/v1/rosters", nil, by...).status)
	assert.Equal(t, 403, s.do("GET", "/api/v1/classes/"+l.ID+"/report", nil, by...).status)

	var leads struct{ Leads []class.Lead }
	l.must("GET", "/classes/"+l.ID+"/leads", nil, &leads)
	require.Len(t, leads.Leads, 1)
	assert.Positive(t, leads.Leads[0].SeenMS)
	l.must("DELETE", "/classes/"+l.ID+"/leads/"+leads.Leads[0].ID, nil, nil)
	assert.Equal(t, 401, s.post("/api/v1/classes/"+l.ID+"/do", start, by...).status, "revoked")
	<-view.closed
	view = l.look(session.Hello{Role: session.Lead, Key: lead.Key})
	var closed *websocket.CloseError
	require.ErrorAs(t, <-view.closed, &closed)
	assert.Equal(t, websocket.ClosePolicyViolation, closed.Code)
}

// opened2 opens a second class beside one.
func (s *server) opened2(l *lesson) *lesson { return l.boss.opened(session.Self, 1) }

func TestARehearsalAndASelfPacedClass(t *testing.T) {
	s := start(t)
	b := s.chief()
	var made struct{ Set session.Set }
	b.must("POST", "/sets", map[string]any{"v": 1, "title": "Inlets", "scenes": []session.Planned{{Family: "f", Seed: 1}, {Family: "g", Seed: 2, LookS: 10}}}, &made)
	assert.Equal(t, 400, b.call("POST", "/classes", map[string]any{"v": 1, "title": "x", "pace": "led", "scenes": []session.Planned{{Family: "nothing", Seed: 1}}}).status)
	l := b.opened(session.Self, 0, "set", made.Set.ID, "rehearsal", true)
	assert.True(t, l.Rehearsal)
	require.Equal(t, 200, l.join(1, "Engine 1").status)
	l.act(session.Started)
	phone := l.look(phoneHello(1, 0))
	view, _ := phone.phone(session.Commit)
	require.Len(t, view.Scenes, 2)
	assert.Equal(t, "g", view.Scenes[1].Family)
	require.Equal(t, 200, l.commit(1, "a", "s1", 3).status)
	paper := l.call("GET", "/classes/"+l.ID+"/report.csv", nil)
	assert.Contains(t, paper.text, "A rehearsal")
	got := l.do(map[string]any{"kind": "undone"})
	assert.Equal(t, 200, got.status, "a start may be undone")
	s.wait(6 * time.Second)
	l.act(session.Started)
	s.wait(6 * time.Second)
	got = l.do(map[string]any{"kind": "undone"})
	assert.Equal(t, 409, got.status)
	assert.Contains(t, got.sentence(t), "5 seconds")
}

// A device that is erased leaves the store, its seats, and its names in classes.
func TestErasingOnesOwn(t *testing.T) {
	data := t.TempDir()
	s := startIn(t, data)
	chief := s.chief()
	l := chief.opened(session.Led, 1)
	require.Equal(t, 200, l.join(1, "Engine 1", "Engine 1 Bravo").status)
	require.Equal(t, 200, l.join(2, "Truck 7").status)
	l.act(session.Renamed, "person", 1, "call_sign", "Engine 11")
	require.Equal(t, 200, l.commit(1, "a", "s1", 0).status)
	require.Equal(t, 200, l.commit(2, "a", "s1", 3).status)
	const mark = "words of one person"
	l.seq[1]++
	note := storetest.Answer(1, l.seq[1])
	note.Kind, note.Body = quiz.NoteEvent, quiz.Raw(`{"text":"`+strings.Repeat(mark, 1500)+`"}`)
	require.Equal(t, 200, s.send(1, []quiz.Event{note}).status)
	board := l.look(session.Hello{Role: session.Board}, l.cookies...)
	board.board(func(b *session.BoardView) bool { return b.People[0].CallSign == "Engine 11" })
	require.Equal(t, 204, s.do("DELETE", "/api/v1/devices", nil, as(1)...).status)
	assert.Equal(t, 401, s.do("GET", "/api/v1/records", nil, as(1)...).status)
	gone := board.board(func(b *session.BoardView) bool { return b.People[0].CallSign == class.Erased })
	assert.Equal(t, class.Erased, gone.People[1].CallSign)
	assert.Equal(t, "Truck 7", gone.People[2].CallSign)
	require.NoError(t, s.Close())
	bytes := func() string {
		raw, err := os.ReadFile(filepath.Join(data, store.FileName))
		require.NoError(t, err)
		return string(raw)
	}
	require.True(t, strings.Contains(bytes(), mark), "free pages hold it until the next start")

	again := startIn(t, data)
	for _, erased := range []string{mark, "Engine 1", storetest.ID(1)} {
		assert.False(t, strings.Contains(bytes(), erased), "%s is left in the file", erased)
	}
	assert.True(t, strings.Contains(bytes(), "Truck 7"))
	state, err := again.Classes().State(l.ID)
	require.NoError(t, err)
	text, err := json.Marshal(state.Report(nil))
	require.NoError(t, err)
	assert.NotContains(t, string(text), "Engine 1")
	assert.Equal(t, 2, state.Committed("s1"), "what was committed stays in the spread, as nobody's")
	lines, err := again.Classes().Store.Lines(l.ID, 0, 1000)
	require.NoError(t, err)
	for _, line := range lines {
		assert.NotContains(t, string(line.Body), storetest.ID(1))
		assert.NotContains(t, string(line.Body), "Engine 1")
	}
}

// Two boards that lead one class press the same button at once: the class goes one
// step, the second is told so, and the look neither begins anew nor loses its undo.
func TestTwoBoardsPressTheSameButton(t *testing.T) {
	s := start(t)
	l := s.chief().opened(session.Led, 2)
	l.act(session.Started)
	l.step(session.Commit, "s1")
	l.step(session.Compare, "s1")
	for _, to := range []session.Step{session.Cutaway, session.Watch} {
		scene := map[session.Step]string{session.Cutaway: "s1", session.Watch: "s2"}[to]
		l.step(to, scene)
		s.wait(time.Second)
		got := l.do(map[string]any{"kind": session.Stepped, "to": to, "scene": scene})
		assert.Equal(t, 409, got.status)
		assert.Contains(t, got.sentence(t), "class is at "+string(to)+" already: go on from there")
	}
	l.act(session.Undone)
	l.step(session.Watch, "s2")
	l.step(session.Commit, "s2")
}
