package live

import (
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
	"time"

	"github.com/gorilla/websocket"
	"github.com/stretchr/testify/require"
)

// Nobody takes frames from this socket's queue. Pushing one more than it holds
// must end the socket and must not wait.
func TestPushNeverWaits(t *testing.T) {
	made := make(chan *websocket.Conn, 1)
	server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		ws, err := new(websocket.Upgrader).Upgrade(w, r, nil)
		if err == nil {
			made <- ws
		}
	}))
	defer server.Close()
	peer, _, err := websocket.DefaultDialer.Dial("ws"+strings.TrimPrefix(server.URL, "http"), nil)
	require.NoError(t, err)
	defer peer.Close()

	limits := DefaultLimits
	limits.Queue = 4
	s := newDeviceSocket(<-made, &limits)
	defer s.ws.Close()
	s.writing = true // nobody takes
	pushed := make(chan struct{})
	go func() {
		for range limits.Queue + 3 {
			s.push([]byte("frame"))
		}
		close(pushed)
	}()
	select {
	case <-pushed:
	case <-time.After(5 * time.Second):
		t.Fatal("pushing did not end")
	}
	require.Eventually(t, s.isOver, 5*time.Second, time.Millisecond)
	_, _, err = peer.ReadMessage()
	require.ErrorContains(t, err, "frames were not taken in time")
}
