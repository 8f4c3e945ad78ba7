package live_test

import (
	"errors"
	"io"
	"log/slog"
	"net/http"
	"net/http/httptest"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/gorilla/websocket"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/quiz"
	"lintel/quiz/session"
	"lintel/server/live"
)

// lesson is a class in memory: phones are let in whose secret is their name in
// upper case.
type lesson struct {
	mu    sync.Mutex
	state session.State
}

func newLesson(t *testing.T, scenes int) *lesson {
	t.Helper()
	l := &lesson{}
	var list []session.Scene
	for n := range scenes {
		list = append(list, session.Scene{ID: "s" + strconv.Itoa(n), Planned: session.Planned{Family: strings.Repeat("long-name-", 8), LookS: 20}})
	}
	l.enter(t, session.Entry{Kind: session.Opened, Class: &session.Class{ID: "c", Title: "Tuesday", Pace: session.Self}, Scenes: list})
	l.enter(t, session.Entry{Kind: session.Started})
	return l
}

func (l *lesson) enter(t *testing.T, e session.Entry) {
	t.Helper()
	l.mu.Lock()
	defer l.mu.Unlock()
	e.V, e.Seq = session.Version, l.state.Seq+1
	next, err := session.Apply(l.state, e)
	require.NoError(t, err)
	l.state = next
}

func (l *lesson) Admit(_ string, hello session.Hello) error {
	if hello.Role == session.Phone && hello.Secret != strings.ToUpper(hello.Device) {
		return quiz.ErrWrongSecret
	}
	return nil
}

func (l *lesson) State(class string) (session.State, error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	if class != "c" {
		return session.State{}, errors.New("no such class")
	}
	return l.state, nil
}

func (l *lesson) Door(string) *session.Door { return &session.Door{Token: "t", Code: "c"} }

var quickRooms = live.RoomLimits{Limits: quick, Coalesce: 100 * time.Millisecond, Walls: 2}

func startRooms(t *testing.T, source live.Source, limits live.RoomLimits) (*live.Rooms, string) {
	t.Helper()
	rooms := live.NewRooms(source, nil, limits, time.Now, slog.New(slog.NewTextHandler(io.Discard, nil)))
	upgrader := websocket.Upgrader{ReadBufferSize: 1024, WriteBufferSize: 1024}
	server := httptest.NewUnstartedServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if ws, err := upgrader.Upgrade(w, r, nil); err == nil {
			class := "c"
			if r.URL.Query().Has("nowhere") {
				class = "nowhere"
			}
			rooms.Serve(ws, class, r.URL.Query().Has("board"))
		}
	}))
	server.Listener = small{server.Listener}
	server.Start()
	t.Cleanup(func() {
		rooms.Close()
		server.Close()
		assert.Zero(t, rooms.Count(), "every socket is gone at the end")
	})
	return rooms, "ws" + strings.TrimPrefix(server.URL, "http")
}

func hello(device string) session.Hello {
	return session.Hello{Role: session.Phone, Device: device, Secret: strings.ToUpper(device)}
}

// watcher reads a socket into a list.
type watcher struct {
	*websocket.Conn
	frames chan session.Frame
	end    chan error
}

func watch(t *testing.T, url string, greeting session.Hello) *watcher {
	t.Helper()
	w := &watcher{Conn: connect(t, url), frames: make(chan session.Frame, 10_000), end: make(chan error, 1)}
	require.NoError(t, w.WriteJSON(greeting))
	go func() {
		for {
			var f session.Frame
			if err := w.ReadJSON(&f); err != nil {
				w.end <- err
				return
			}
			w.frames <- f
		}
	}()
	return w
}

// quiet is what came in up to a moment of silence.
func (w *watcher) quiet() (all []session.Frame) {
	for {
		select {
		case f := <-w.frames:
			all = append(all, f)
		case <-time.After(400 * time.Millisecond):
			return all
		}
	}
}

// However often a class changes, its viewers hear of it a few times, each time
// with a higher number, and the last they hear is how it stands.
func TestChangesAreGathered(t *testing.T) {
	l := newLesson(t, 1)
	rooms, url := startRooms(t, l, quickRooms)
	phone := watch(t, url, hello("phone"))
	require.Len(t, phone.quiet(), 2, "a view and the people on the phone")
	began := time.Now()
	for n := range 1001 {
		l.enter(t, session.Entry{Kind: session.Locked, On: n%2 == 0})
		rooms.Changed("c", nil, false)
	}
	l.enter(t, session.Entry{Kind: session.Ended})
	rooms.Changed("c", nil, false)
	turns := int(time.Since(began)/quickRooms.Coalesce) + 2
	got := phone.quiet()
	require.NotEmpty(t, got)
	assert.LessOrEqual(t, len(got), turns)
	last := uint64(0)
	for _, f := range got {
		assert.Greater(t, f.Seq, last)
		last = f.Seq
	}
	assert.Equal(t, session.Over, got[len(got)-1].Phone.Step)
	assert.EqualValues(t, 2+1001+1, last)
}

// Phones that read nothing are dropped with "try again", are welcomed back, and
// hold nobody up.
func TestPhonesThatReadNothingAreDropped(t *testing.T) {
	l := newLesson(t, 40) // a view of several kilobytes, so that not reading is felt
	rooms, url := startRooms(t, l, quickRooms)
	var stuck []*websocket.Conn
	for n := range 5 {
		ws := connect(t, url)
		require.NoError(t, ws.WriteJSON(hello("stuck"+strconv.Itoa(n))))
		stuck = append(stuck, ws)
	}
	good := watch(t, url, hello("good"))
	good.quiet()
	deadline := time.Now().Add(20 * time.Second)
	for n := 0; rooms.Count() > 1; n++ {
		require.True(t, time.Now().Before(deadline), "they were never dropped")
		l.enter(t, session.Entry{Kind: session.Locked, On: n%2 == 0})
		rooms.Changed("c", nil, false)
		select {
		case f := <-good.frames:
			require.NotNil(t, f.Phone)
		case <-time.After(5 * time.Second):
			t.Fatal("a good phone was held up")
		}
	}
	code, _ := ending(stuck[0])
	assert.Contains(t, []int{websocket.CloseTryAgainLater, 0}, code, "told so, or cut where even that was not taken")
	back := watch(t, url, hello("stuck0"))
	got := back.quiet()
	require.NotEmpty(t, got)
	assert.Len(t, got[0].Phone.Scenes, 40)
}

func TestRoomsAreBounded(t *testing.T) {
	limits := quickRooms
	limits.Sockets, limits.PerDevice = 3, 2
	limits.Ping, limits.Silence = time.Second, 10*time.Second
	l := newLesson(t, 1)
	rooms, url := startRooms(t, l, limits)
	first, second := watch(t, url, hello("phone")), watch(t, url, hello("phone"))
	first.quiet()
	second.quiet()
	third := watch(t, url, hello("phone"))
	third.quiet()
	var closed *websocket.CloseError
	require.ErrorAs(t, <-first.end, &closed, "the oldest of one phone too many")
	assert.Equal(t, websocket.ClosePolicyViolation, closed.Code)
	require.Eventually(t, func() bool { return rooms.Count() == 2 }, 5*time.Second, 5*time.Millisecond)
	other := watch(t, url, hello("other"))
	other.quiet()
	assert.Equal(t, 2, rooms.Connected("c"))
	code, _ := ending(connect(t, url))
	assert.Equal(t, websocket.CloseTryAgainLater, code, "no more sockets than that")

	go rooms.Close()
	require.ErrorAs(t, <-other.end, &closed)
	assert.Equal(t, websocket.CloseGoingAway, closed.Code)
}

// A phone reads from the same constant how long it had for its hello.
func TestRoomsWaitForAHelloAsPhonesThink(t *testing.T) {
	assert.Equal(t, session.HelloPatienceMS*time.Millisecond, live.DefaultRoomLimits.Hello)
}

// Who says nothing, something else, or not who they are, is let go.
func TestAHelloIsAsked(t *testing.T) {
	_, url := startRooms(t, newLesson(t, 1), quickRooms)
	for name, text := range map[string]string{
		"nothing": "", "junk": "{", "another field": `{"role":"phone","device":"a","secret":"A","last":0,"x":1}`,
		"a wrong secret": `{"role":"phone","device":"a","secret":"b","last":0}`, "a board that is none": `{"role":"board","last":0}`,
		"two frames in one": `{"role":"phone","device":"a","secret":"A","last":0}{}`,
	} {
		t.Run(name, func(t *testing.T) {
			ws := connect(t, url)
			if text != "" {
				require.NoError(t, ws.WriteMessage(websocket.TextMessage, []byte(text)))
			}
			code, _ := ending(ws)
			assert.Equal(t, websocket.ClosePolicyViolation, code)
		})
	}
	board := watch(t, url+"?board", session.Hello{Role: session.Board})
	kinds := map[session.FrameKind]bool{}
	for _, f := range board.quiet() {
		kinds[f.Kind] = true
	}
	assert.Equal(t, map[session.FrameKind]bool{session.ViewFrame: true, session.HereFrame: true, session.DoorFrame: true}, kinds)
	// The server may have hung up before the whole of it was written: what it
	// said in hanging up still comes through.
	huge := connect(t, url)
	_ = huge.WriteMessage(websocket.TextMessage, make([]byte, 5000))
	code, _ := ending(huge)
	assert.Contains(t, []int{websocket.CloseMessageTooBig, websocket.ClosePolicyViolation}, code)
}

// A viewer that holds what is so is told so, and one that holds less the whole.
func TestComingBack(t *testing.T) {
	l := newLesson(t, 1)
	rooms, url := startRooms(t, l, quickRooms)
	phone := watch(t, url, hello("phone"))
	seq := phone.quiet()[0].Seq
	phone.Close()
	again := hello("phone")
	again.Last = seq
	assert.Equal(t, session.CurrentFrame, watch(t, url, again).quiet()[0].Kind)
	l.enter(t, session.Entry{Kind: session.Locked, On: true})
	rooms.Changed("c", nil, false)
	first := watch(t, url, again).quiet()[0]
	assert.Equal(t, session.ViewFrame, first.Kind)
	assert.Greater(t, first.Seq, seq)
}
