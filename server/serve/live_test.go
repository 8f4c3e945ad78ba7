package serve_test

import (
	"errors"
	"fmt"
	"net"
	"net/http"
	"strings"
	"testing"
	"time"

	"github.com/gorilla/websocket"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/server/store/storetest"
)

// join opens a live socket as device n and reads its greeting.
func (s *server) join(n int) *websocket.Conn {
	s.t.Helper()
	dialer := websocket.Dialer{NetDial: func(network, addr string) (net.Conn, error) {
		conn, err := net.Dial(network, addr)
		if tcp, ok := conn.(*net.TCPConn); ok {
			_ = tcp.SetReadBuffer(2048) // so that not reading is soon felt
		}
		return conn, err
	}}
	ws, _, err := dialer.Dial("ws"+strings.TrimPrefix(s.url, "http")+"/api/v1/live", http.Header{"Origin": {s.url}})
	require.NoError(s.t, err)
	s.t.Cleanup(func() { ws.Close() })
	require.NoError(s.t, ws.WriteJSON(map[string]string{"device": storetest.ID(n), "secret": storetest.Secret(n)}))
	requireFrame(s.t, ws, `{"kind":"version","engine":"0.1.0","content":"c1"}`)
	return ws
}

func requireFrame(t *testing.T, ws *websocket.Conn, want string) {
	t.Helper()
	require.NoError(t, ws.SetReadDeadline(time.Now().Add(5*time.Second)))
	_, text, err := ws.ReadMessage()
	require.NoError(t, err)
	require.JSONEq(t, want, string(text))
}

func TestASocketHearsWhatIsAcknowledged(t *testing.T) {
	s := start(t)
	s.register(1)
	require.Equal(t, 200, s.send(1, storetest.Answers(1, 1, 2)).status)
	ws := s.join(1)
	requireFrame(t, ws, `{"kind":"acked","seq":2}`)
	require.Equal(t, 200, s.send(1, storetest.Answers(1, 3, 7)).status)
	requireFrame(t, ws, `{"kind":"acked","seq":7}`)
}

// Two real clients of one device: one reads nothing, the other must get every
// frame and the API must go on as if nothing were.
func TestAClientThatDoesNotReadHoldsNobodyUp(t *testing.T) {
	s := start(t)
	s.register(1)
	stuck, good := s.join(1), s.join(1)
	requireFrame(t, good, `{"kind":"acked","seq":0}`)
	var slowest time.Duration
	for seq := uint64(1); seq <= 90; seq++ { // within the burst of one device
		began := time.Now()
		require.Equal(t, 200, s.send(1, storetest.Answers(1, seq, seq)).status)
		slowest = max(slowest, time.Since(began))
		requireFrame(t, good, fmt.Sprintf(`{"kind":"acked","seq":%d}`, seq))
	}
	assert.Less(t, slowest, time.Second)
	stuck.Close()
}

func TestForeignSocketsAreRefused(t *testing.T) {
	s := start(t)
	for _, path := range []string{"/api/v1/live", "/api/v1/classes/" + storetest.ID(1) + "/live"} {
		url := "ws" + strings.TrimPrefix(s.url, "http") + path
		_, reply, err := websocket.DefaultDialer.Dial(url, http.Header{"Origin": {"https://elsewhere.example"}})
		require.ErrorIs(t, err, websocket.ErrBadHandshake)
		assert.Equal(t, 403, reply.StatusCode, path)
		ws, _, err := websocket.DefaultDialer.Dial(url, http.Header{"Origin": {s.url}})
		require.NoError(t, err, "its own origin: %s", path)
		require.NoError(t, ws.Close())
	}
	got := s.do("GET", "/api/v1/live", nil)
	assert.Equal(t, 400, got.status)
	assert.Contains(t, got.sentence(t), "connect with a websocket client")
}

func TestStoppingTellsSocketsAndAnswersRequests(t *testing.T) {
	s := start(t)
	s.register(1)
	ws := s.join(1)
	requireFrame(t, ws, `{"kind":"acked","seq":0}`)
	// A request whose body is still on its way when the server stops.
	conn, err := net.Dial("tcp", s.Addr().String())
	require.NoError(t, err)
	defer conn.Close()
	body := fmt.Sprintf(`{"v":1,"device":"%s","secret":"%s","call_sign":"Late"}`, storetest.ID(9), storetest.Secret(9))
	fmt.Fprintf(conn, "POST /api/v1/devices HTTP/1.1\r\nHost: x\r\nContent-Type: application/json\r\nContent-Length: %d\r\n\r\n%s", len(body), body[:20])

	done := make(chan error, 1)
	began := time.Now()
	go func() { done <- s.Close() }()
	require.NoError(t, ws.SetReadDeadline(time.Now().Add(5*time.Second)))
	_, _, err = ws.ReadMessage()
	var closed *websocket.CloseError
	require.True(t, errors.As(err, &closed), "%v", err)
	assert.Equal(t, websocket.CloseGoingAway, closed.Code)

	_, err = conn.Write([]byte(body[20:]))
	require.NoError(t, err)
	line := make([]byte, 32)
	n, err := conn.Read(line)
	require.NoError(t, err)
	assert.Contains(t, string(line[:n]), "HTTP/1.1 201", "what was under way is answered")
	require.NoError(t, <-done)
	assert.Less(t, time.Since(began), 8*time.Second)
	_, err = net.Dial("tcp", s.Addr().String())
	require.Error(t, err, "nobody listens any more")
}
