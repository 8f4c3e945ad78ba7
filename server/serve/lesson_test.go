package serve_test

import (
	"encoding/json"
	"net"
	"net/http"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/gorilla/websocket"
	"github.com/stretchr/testify/require"

	"lintel/quiz"
	"lintel/quiz/session"
	"lintel/server/store/storetest"
)

// lesson is a class with the instructor who opened it.
type lesson struct {
	*boss
	session.Listed
	seq map[int]uint64 // last event of each device
}

// opened opens a class of so many scenes of family f, with 20 s to look.
func (b *boss) opened(pace session.Pace, scenes int, more ...any) *lesson {
	b.t.Helper()
	var planned []session.Planned
	for n := range scenes {
		planned = append(planned, session.Planned{Family: "f", Seed: uint64(n + 1), LookS: 20, Note: "ask why"})
	}
	plan := map[string]any{"v": 1, "title": "Tuesday", "scenes": planned, "pace": pace}
	for i := 0; i+1 < len(more); i += 2 {
		plan[more[i].(string)] = more[i+1]
	}
	var made struct{ Class session.Listed }
	b.must("POST", "/classes", plan, &made)
	return &lesson{boss: b, Listed: made.Class, seq: map[int]uint64{}}
}

func (l *lesson) do(act map[string]any) reply {
	l.t.Helper()
	return l.call("POST", "/classes/"+l.ID+"/do", map[string]any{"v": 1, "act": act})
}

func (l *lesson) act(kind session.Kind, more ...any) {
	l.t.Helper()
	act := map[string]any{"kind": kind}
	for i := 0; i+1 < len(more); i += 2 {
		act[more[i].(string)] = more[i+1]
	}
	got := l.do(act)
	require.Equal(l.t, 200, got.status, got.text)
}

func (l *lesson) step(to session.Step, scene string) {
	l.act(session.Stepped, "to", to, "scene", scene)
}

// join takes device n in by the token, under the call signs given.
func (l *lesson) join(n int, signs ...string) reply {
	l.t.Helper()
	return l.enter(n, map[string]any{"v": 1, "token": l.Door.Token}, signs...)
}

func (l *lesson) enter(n int, way map[string]any, signs ...string) reply {
	l.t.Helper()
	named := map[string]string{}
	for i, sign := range signs {
		named[[]string{"a", "b"}[i]] = sign
	}
	way["call_signs"] = named
	return l.post("/api/v1/join", way, as(n)...)
}

// commit has the person at a place of device n rate the volume in a scene.
func (l *lesson) commit(n int, place, scene string, volume int) reply {
	l.t.Helper()
	return l.server.send(n, l.answers(n, place, scene, volume))
}

func (l *lesson) answers(n int, place, scene string, volume int) []quiz.Event {
	l.t.Helper()
	l.seq[n]++
	e := storetest.Answer(n, l.seq[n])
	seed, err := strconv.Atoi(strings.TrimPrefix(scene, "s"))
	require.NoError(l.t, err)
	plane := 0.4
	body := quiz.AnswerBody{
		Answer: quiz.Answer{V: 1, Engine: "0.1.0", Content: "c1", Family: "f", Seed: uint64(seed), TookS: 7,
			Replies: []quiz.Reply{{Ask: "level:volume@door", Level: &volume}, {Ask: "plane@door", Plane: &plane}}},
		Verdict: quiz.Verdict{V: 1, Score: 1, Parts: []quiz.Part{}},
		Class:   &quiz.ClassRef{ID: l.ID, Scene: scene, Place: place, Rehearsal: l.Rehearsal},
	}
	text, err := json.Marshal(body)
	require.NoError(l.t, err)
	e.Body = quiz.Raw(text)
	return []quiz.Event{e}
}

// viewer is a live socket that looks at a class.
type viewer struct {
	t      *testing.T
	ws     *websocket.Conn
	frames chan session.Frame
	closed chan error
}

func (l *lesson) look(hello session.Hello, cookies ...string) *viewer {
	l.t.Helper()
	v := l.dial(cookies...)
	require.NoError(l.t, v.ws.WriteJSON(hello))
	go v.read()
	return v
}

func (l *lesson) dial(cookies ...string) *viewer {
	l.t.Helper()
	header := http.Header{"Origin": {l.url}}
	if len(cookies) > 0 {
		header.Set("Cookie", strings.Join(cookies, "; "))
	}
	dialer := websocket.Dialer{NetDial: func(network, addr string) (net.Conn, error) {
		conn, err := net.Dial(network, addr)
		if tcp, ok := conn.(*net.TCPConn); ok {
			_ = tcp.SetReadBuffer(2048) // so that not reading is soon felt
		}
		return conn, err
	}}
	ws, _, err := dialer.Dial("ws"+strings.TrimPrefix(l.url, "http")+"/api/v1/classes/"+l.ID+"/live", header)
	require.NoError(l.t, err)
	l.t.Cleanup(func() { ws.Close() })
	return &viewer{t: l.t, ws: ws, frames: make(chan session.Frame, 10_000), closed: make(chan error, 1)}
}

func (v *viewer) read() {
	for {
		var f session.Frame
		if err := v.ws.ReadJSON(&f); err != nil {
			v.closed <- err
			close(v.frames)
			return
		}
		v.frames <- f
	}
}

// until reads on to the first frame that fits.
func (v *viewer) until(fits func(session.Frame) bool) session.Frame {
	v.t.Helper()
	patience := time.After(10 * time.Second)
	for {
		select {
		case f, ok := <-v.frames:
			if !ok {
				v.t.Fatalf("the socket closed: %v", <-v.closed)
			}
			if fits(f) {
				return f
			}
		case <-patience:
			v.t.Fatal("the frame did not come")
		}
	}
}

func (v *viewer) board(fits func(*session.BoardView) bool) *session.BoardView {
	v.t.Helper()
	return v.until(func(f session.Frame) bool { return f.Board != nil && fits(f.Board) }).Board
}

func (v *viewer) phone(step session.Step) (*session.PhoneView, uint64) {
	v.t.Helper()
	f := v.until(func(f session.Frame) bool { return f.Phone != nil && f.Phone.Step == step })
	return f.Phone, f.Seq
}

func phoneHello(n int, last uint64) session.Hello {
	return session.Hello{Role: session.Phone, Device: storetest.ID(n), Secret: storetest.Secret(n), Last: last}
}
