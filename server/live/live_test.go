package live_test

import (
	"errors"
	"fmt"
	"io"
	"log/slog"
	"net"
	"net/http"
	"net/http/httptest"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/gorilla/websocket"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/quiz"
	"lintel/server/live"
)

// people is a store in memory: a device's secret is its name turned upper case.
type people struct {
	mu    sync.Mutex
	acked map[string]uint64
}

func (p *people) Authenticate(device, secret string) (quiz.Device, error) {
	switch {
	case !strings.HasPrefix(device, "device"):
		return quiz.Device{}, quiz.ErrUnknownDevice
	case secret != strings.ToUpper(device):
		return quiz.Device{}, quiz.ErrWrongSecret
	}
	return quiz.Device{ID: device}, nil
}

func (p *people) Acked(device string) (uint64, error) {
	p.mu.Lock()
	defer p.mu.Unlock()
	return p.acked[device], nil
}

var quick = live.Limits{
	Sockets: 100, Waiting: 100, PerDevice: 2, Queue: 8, Frame: 1024,
	Hello: 300 * time.Millisecond, Write: 300 * time.Millisecond, Ping: 50 * time.Millisecond, Silence: 400 * time.Millisecond,
}

// start serves a hub and returns it with its address.
func start(t *testing.T, limits live.Limits) (*live.Hub, string) {
	t.Helper()
	store := &people{acked: map[string]uint64{"device-a": 7}}
	hub := live.New(store, live.Version{Engine: "0.1.0", Content: "c1"}, limits, slog.New(slog.NewTextHandler(io.Discard, nil)))
	upgrader := websocket.Upgrader{ReadBufferSize: 1024, WriteBufferSize: 1024}
	server := httptest.NewUnstartedServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if ws, err := upgrader.Upgrade(w, r, nil); err == nil {
			hub.Serve(ws)
		}
	}))
	server.Listener = small{server.Listener}
	server.Start()
	t.Cleanup(func() {
		hub.Close()
		server.Close()
		assert.Zero(t, hub.Count(), "every socket is gone at the end")
	})
	return hub, "ws" + strings.TrimPrefix(server.URL, "http")
}

// small gives connections little room in the kernel, so that a client that does
// not read is felt after a few hundred frames.
type small struct{ net.Listener }

func (s small) Accept() (net.Conn, error) {
	conn, err := s.Listener.Accept()
	if tcp, ok := conn.(*net.TCPConn); ok {
		_ = tcp.SetWriteBuffer(2048)
	}
	return conn, err
}

var dialer = websocket.Dialer{NetDial: func(network, addr string) (net.Conn, error) {
	conn, err := net.Dial(network, addr)
	if tcp, ok := conn.(*net.TCPConn); ok {
		_ = tcp.SetReadBuffer(2048)
	}
	return conn, err
}}

func connect(t *testing.T, url string) *websocket.Conn {
	t.Helper()
	ws, _, err := dialer.Dial(url, nil)
	require.NoError(t, err)
	t.Cleanup(func() { ws.Close() })
	return ws
}

// join connects as a device and reads the two frames that greet it.
func join(t *testing.T, url, device string) *websocket.Conn {
	t.Helper()
	ws := connect(t, url)
	require.NoError(t, ws.WriteJSON(map[string]string{"device": device, "secret": strings.ToUpper(device)}))
	assert.JSONEq(t, `{"kind":"version","engine":"0.1.0","content":"c1"}`, next(t, ws))
	assert.Contains(t, next(t, ws), `"kind":"acked"`)
	return ws
}

func next(t *testing.T, ws *websocket.Conn) string {
	t.Helper()
	_ = ws.SetReadDeadline(time.Now().Add(5 * time.Second))
	_, text, err := ws.ReadMessage()
	require.NoError(t, err)
	return string(text)
}

// ending reads to the end of a socket and returns its close code and reason.
func ending(ws *websocket.Conn) (int, string) {
	_ = ws.SetReadDeadline(time.Now().Add(5 * time.Second))
	for {
		if _, _, err := ws.ReadMessage(); err != nil {
			var closed *websocket.CloseError
			if errors.As(err, &closed) {
				return closed.Code, closed.Text
			}
			return 0, err.Error()
		}
	}
}

func TestGreetingAndPush(t *testing.T) {
	hub, url := start(t, quick)
	ws := connect(t, url)
	require.NoError(t, ws.WriteJSON(map[string]string{"device": "device-a", "secret": "DEVICE-A"}))
	assert.JSONEq(t, `{"kind":"version","engine":"0.1.0","content":"c1"}`, next(t, ws))
	assert.JSONEq(t, `{"kind":"acked","seq":7}`, next(t, ws))
	hub.Acked("device-a", 9)
	hub.Acked("device-b", 99)
	assert.JSONEq(t, `{"kind":"acked","seq":9}`, next(t, ws), "a device hears of its own events only")
}

func TestWhoIsTurnedAway(t *testing.T) {
	_, url := start(t, quick)
	for name, hello := range map[string]string{
		"wrong secret":    `{"device":"device-a","secret":"x"}`,
		"unknown device":  `{"device":"stranger","secret":"x"}`,
		"not an object":   `[1,2]`,
		"not JSON":        `hello`,
		"an extra field":  `{"device":"device-a","secret":"DEVICE-A","admin":true}`,
		"two values":      `{"device":"device-a","secret":"DEVICE-A"}{}`,
		"no secret":       `{"device":"device-a"}`,
		"an empty device": `{}`,
	} {
		t.Run(name, func(t *testing.T) {
			ws := connect(t, url)
			require.NoError(t, ws.WriteMessage(websocket.TextMessage, []byte(hello)))
			code, _ := ending(ws)
			assert.Equal(t, websocket.ClosePolicyViolation, code)
		})
	}
	t.Run("one answer for both", func(t *testing.T) {
		var said [2]string
		for i, hello := range []string{`{"device":"device-a","secret":"x"}`, `{"device":"stranger","secret":"x"}`} {
			ws := connect(t, url)
			require.NoError(t, ws.WriteMessage(websocket.TextMessage, []byte(hello)))
			_, said[i] = ending(ws)
		}
		assert.Equal(t, said[0], said[1])
		assert.Contains(t, said[0], "do not match")
	})
	t.Run("binary", func(t *testing.T) {
		ws := connect(t, url)
		require.NoError(t, ws.WriteMessage(websocket.BinaryMessage, []byte(`{"device":"device-a","secret":"DEVICE-A"}`)))
		code, _ := ending(ws)
		assert.Equal(t, websocket.ClosePolicyViolation, code)
	})
	t.Run("silence", func(t *testing.T) {
		began := time.Now()
		code, _ := ending(connect(t, url))
		assert.Equal(t, websocket.ClosePolicyViolation, code)
		assert.Less(t, time.Since(began), 2*time.Second)
	})
	t.Run("a frame too large", func(t *testing.T) {
		ws := connect(t, url)
		require.NoError(t, ws.WriteMessage(websocket.TextMessage, []byte(strings.Repeat("x", 1100))))
		code, _ := ending(ws)
		assert.Equal(t, websocket.CloseMessageTooBig, code)
	})
	t.Run("talk after the hello", func(t *testing.T) {
		ws := join(t, url, "device-b")
		require.NoError(t, ws.WriteMessage(websocket.TextMessage, []byte("more")))
		code, _ := ending(ws)
		assert.Equal(t, websocket.ClosePolicyViolation, code)
	})
}

// One client stops reading; the other must still get every frame, in order, and
// pushing must never wait for the one that is stuck.
func TestSlowClientIsDroppedAndTheOtherGetsAll(t *testing.T) {
	hub, url := start(t, quick)
	slow, good := join(t, url, "device-a"), join(t, url, "device-a")
	require.Equal(t, 2, hub.Count())

	var slowest time.Duration
	seq, dropped := uint64(0), uint64(0)
	for began := time.Now(); time.Since(began) < 10*time.Second && (dropped == 0 || seq < dropped+500); {
		seq++
		pushing := time.Now()
		hub.Acked("device-a", seq)
		slowest = max(slowest, time.Since(pushing))
		require.JSONEq(t, fmt.Sprintf(`{"kind":"acked","seq":%d}`, seq), next(t, good))
		if dropped == 0 && hub.Count() == 1 {
			dropped = seq
		}
	}
	t.Logf("the stuck client was gone by frame %d of %d; slowest push %v", dropped, seq, slowest)
	require.NotZero(t, dropped, "the stuck client is dropped")
	assert.Less(t, slowest, quick.Write, "nobody waits for it: a push that did would wait as long as a write may")
	code, _ := ending(slow)
	assert.NotEqual(t, websocket.CloseNormalClosure, code)
}

func TestNewestSocketsOfADeviceStay(t *testing.T) {
	hub, url := start(t, quick)
	first := join(t, url, "device-a")
	join(t, url, "device-a")
	join(t, url, "device-a")
	code, why := ending(first)
	assert.Equal(t, websocket.ClosePolicyViolation, code)
	assert.Contains(t, why, "newer")
	require.Eventually(t, func() bool { return hub.Count() == 2 }, 5*time.Second, time.Millisecond)
}

func TestFullHouse(t *testing.T) {
	limits := quick
	limits.Sockets = 3
	hub, url := start(t, limits)
	for n := range 3 {
		join(t, url, fmt.Sprintf("device-%d", n))
	}
	code, why := ending(connect(t, url))
	assert.Equal(t, websocket.CloseTryAgainLater, code)
	assert.Contains(t, why, "connect again later")
	assert.Equal(t, 3, hub.Count())
}

func TestSilentPeerIsLetGo(t *testing.T) {
	hub, url := start(t, quick)
	ws := join(t, url, "device-a")
	ws.SetPingHandler(func(string) error { return nil }) // answers no ping
	began := time.Now()
	_, _ = ending(ws)
	assert.Less(t, time.Since(began), 3*time.Second)
	require.Eventually(t, func() bool { return hub.Count() == 0 }, 5*time.Second, time.Millisecond)
}

func TestAnsweringPeerStays(t *testing.T) {
	hub, url := start(t, quick)
	ws := join(t, url, "device-a")
	go func() { _, _ = ending(ws) }() // reading answers pings
	time.Sleep(3 * quick.Silence)
	assert.Equal(t, 1, hub.Count())
}

func TestCloseSaysGoingAway(t *testing.T) {
	hub, url := start(t, quick)
	var all []*websocket.Conn
	for n := range 20 {
		all = append(all, join(t, url, fmt.Sprintf("device-%d", n)))
	}
	undecided := connect(t, url) // has not said hello
	require.Eventually(t, func() bool { return hub.Count() == 21 }, 5*time.Second, time.Millisecond)
	done := make(chan struct{})
	go func() { hub.Close(); close(done) }()
	for _, ws := range append(all, undecided) {
		code, _ := ending(ws)
		assert.Equal(t, websocket.CloseGoingAway, code)
	}
	select {
	case <-done:
	case <-time.After(5 * time.Second):
		t.Fatal("closing did not end")
	}
	code, _ := ending(connect(t, url))
	assert.Equal(t, websocket.CloseTryAgainLater, code, "nobody is admitted afterwards")
}

// Joining, leaving, pushing and closing at once, for the race detector.
func TestEverythingAtOnce(t *testing.T) {
	hub, url := start(t, quick)
	var all sync.WaitGroup
	for n := range 30 {
		all.Go(func() {
			ws, _, err := dialer.Dial(url, nil)
			if err != nil {
				return
			}
			defer ws.Close()
			device := fmt.Sprintf("device-%d", n%7)
			_ = ws.WriteJSON(map[string]string{"device": device, "secret": strings.ToUpper(device)})
			for range n % 5 {
				if _, _, err := ws.ReadMessage(); err != nil {
					return
				}
			}
		})
		all.Go(func() {
			for seq := range uint64(50) {
				hub.Acked(fmt.Sprintf("device-%d", n%7), seq)
			}
		})
	}
	all.Go(func() { time.Sleep(20 * time.Millisecond); hub.Close() })
	all.Wait()
}
