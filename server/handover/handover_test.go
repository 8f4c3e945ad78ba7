package handover_test

import (
	"bufio"
	"fmt"
	"net"
	"net/http"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/gofiber/fiber/v2"
	"github.com/gorilla/websocket"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/server/handover"
)

var upgrader = websocket.Upgrader{ReadBufferSize: 1024, WriteBufferSize: 1024, WriteBufferPool: &sync.Pool{}}

// echo sends back what it gets.
func echo(ws *websocket.Conn) {
	for {
		kind, text, err := ws.ReadMessage()
		if err != nil {
			return
		}
		if ws.WriteMessage(kind, text) != nil {
			return
		}
	}
}

// start serves sockets on /ws and a page on /page, and returns host:port and
// the app. Refusals are answered with their status.
func start(t testing.TB, serve func(*websocket.Conn)) (string, *fiber.App) {
	t.Helper()
	app := fiber.New(fiber.Config{DisableStartupMessage: true, ReadTimeout: 2 * time.Second})
	handover.Allow(app)
	app.All("/ws", func(c *fiber.Ctx) error {
		err := handover.Upgrade(c, upgrader, serve)
		if refusal, ok := err.(*handover.Refusal); ok {
			return c.Status(refusal.Status).SendString(refusal.Reason)
		}
		return err
	})
	app.Get("/page/:name", func(c *fiber.Ctx) error { return c.SendString("page " + c.Params("name")) })
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	done := make(chan error, 1)
	go func() { done <- app.Listener(listener) }()
	t.Cleanup(func() {
		assert.NoError(t, app.ShutdownWithTimeout(5*time.Second))
		assert.NoError(t, <-done)
	})
	return listener.Addr().String(), app
}

func dial(t testing.TB, addr string, header http.Header) *websocket.Conn {
	t.Helper()
	ws, _, err := websocket.DefaultDialer.Dial("ws://"+addr+"/ws", header)
	require.NoError(t, err)
	t.Cleanup(func() { ws.Close() })
	return ws
}

const handshake = "GET /ws HTTP/1.1\r\nHost: %s\r\nConnection: Upgrade\r\nUpgrade: websocket\r\nSec-WebSocket-Version: 13\r\nSec-WebSocket-Key: dGhlIHNhbXBsZSBub25jZQ==\r\n\r\n"

// maskedText is a client frame as RFC 6455, section 5.7, prints it: a masked
// text message that holds "Hello".
var maskedText = []byte{0x81, 0x85, 0x37, 0xfa, 0x21, 0x3d, 0x7f, 0x9f, 0x4d, 0x51, 0x58}

// The handshake's answer is the one that RFC 6455, section 1.3, gives for its
// sample nonce.
func TestHandshakeOfTheStandard(t *testing.T) {
	addr, _ := start(t, echo)
	conn, err := net.Dial("tcp", addr)
	require.NoError(t, err)
	defer conn.Close()
	fmt.Fprintf(conn, handshake, addr)
	reply, err := http.ReadResponse(bufio.NewReader(conn), nil)
	require.NoError(t, err)
	defer reply.Body.Close()
	assert.Equal(t, 101, reply.StatusCode)
	assert.Equal(t, "s3pPLMBiTxaQ9kYGzzhZRbK+xOo=", reply.Header.Get("Sec-WebSocket-Accept"))
}

func TestFrameInTheSamePacketIsDelivered(t *testing.T) {
	addr, _ := start(t, echo)
	conn, err := net.Dial("tcp", addr)
	require.NoError(t, err)
	defer conn.Close()
	_, err = conn.Write(append([]byte(fmt.Sprintf(handshake, addr)), maskedText...))
	require.NoError(t, err)
	require.NoError(t, conn.SetReadDeadline(time.Now().Add(5*time.Second)))
	reader := bufio.NewReader(conn)
	reply, err := http.ReadResponse(reader, nil)
	require.NoError(t, err)
	defer reply.Body.Close()
	frame := make([]byte, 7)
	_, err = reader.Read(frame)
	require.NoError(t, err)
	// RFC 6455, section 5.7: the unmasked text message "Hello".
	assert.Equal(t, []byte{0x81, 0x05, 'H', 'e', 'l', 'l', 'o'}, frame)
}

func TestWhatIsRefused(t *testing.T) {
	addr, _ := start(t, echo)
	get := func(method string, header http.Header) int {
		request, err := http.NewRequest(method, "http://"+addr+"/ws", nil)
		require.NoError(t, err)
		for name := range header {
			request.Header.Set(name, header.Get(name))
		}
		reply, err := http.DefaultClient.Do(request)
		require.NoError(t, err)
		reply.Body.Close()
		return reply.StatusCode
	}
	upgrade := func(more ...string) http.Header {
		header := http.Header{}
		for i, pair := 0, append([]string{"Connection", "Upgrade", "Upgrade", "websocket", "Sec-WebSocket-Version", "13", "Sec-WebSocket-Key", "dGhlIHNhbXBsZSBub25jZQ=="}, more...); i < len(pair); i += 2 {
			header.Set(pair[i], pair[i+1])
		}
		return header
	}
	assert.Equal(t, 400, get("GET", nil), "a plain GET")
	assert.Equal(t, 405, get("POST", upgrade()), "a POST")
	assert.Equal(t, 403, get("GET", upgrade("Origin", "https://elsewhere.example")), "a foreign origin")
	assert.Equal(t, 400, get("GET", upgrade("Sec-WebSocket-Version", "8")), "an old version")
	assert.Equal(t, 400, get("GET", upgrade("Sec-WebSocket-Key", "short")), "a bad key")

	ws := dial(t, addr, http.Header{"Origin": {"http://" + addr}})
	require.NoError(t, ws.WriteMessage(websocket.TextMessage, []byte("own origin")))
}

// The server's read timeout must not reach a socket, and its buffers must not
// leak from one connection into another.
func TestManySocketsAndPages(t *testing.T) {
	addr, _ := start(t, echo)
	var all sync.WaitGroup
	for n := range 60 {
		all.Go(func() {
			ws, _, err := websocket.DefaultDialer.Dial("ws://"+addr+"/ws", nil)
			if !assert.NoError(t, err) {
				return
			}
			defer ws.Close()
			for k := range 20 {
				want := strings.Repeat(fmt.Sprintf("socket %d frame %d;", n, k), 1+k*7)
				assert.NoError(t, ws.WriteMessage(websocket.TextMessage, []byte(want)))
				_, got, err := ws.ReadMessage()
				if !assert.NoError(t, err) || !assert.Equal(t, want, string(got)) {
					return
				}
			}
		})
		all.Go(func() {
			reply, err := http.Get(fmt.Sprintf("http://%s/page/p%d", addr, n))
			if assert.NoError(t, err) {
				reply.Body.Close()
				assert.Equal(t, 200, reply.StatusCode)
			}
		})
	}
	all.Wait()
}

func TestSocketOutlivesTheReadTimeout(t *testing.T) {
	addr, _ := start(t, echo)
	ws := dial(t, addr, nil)
	time.Sleep(2500 * time.Millisecond) // the app reads requests for 2 s at most
	require.NoError(t, ws.WriteMessage(websocket.TextMessage, []byte("still here")))
	_, got, err := ws.ReadMessage()
	require.NoError(t, err)
	assert.Equal(t, "still here", string(got))
}

func TestNothingReadsAfterServeReturns(t *testing.T) {
	kept := make(chan *websocket.Conn, 1)
	addr, _ := start(t, func(ws *websocket.Conn) { kept <- ws })
	dial(t, addr, nil)
	ws := <-kept
	require.Eventually(t, func() bool {
		_, _, err := ws.ReadMessage()
		return err != nil
	}, 5*time.Second, time.Millisecond)
}

func TestPanicInASocketEndsOnlyIt(t *testing.T) {
	addr, _ := start(t, func(ws *websocket.Conn) {
		if _, text, _ := ws.ReadMessage(); string(text) == "fall" {
			panic("as asked")
		}
	})
	ws := dial(t, addr, nil)
	require.NoError(t, ws.WriteMessage(websocket.TextMessage, []byte("fall")))
	_, _, err := ws.ReadMessage()
	require.Error(t, err)
	reply, err := http.Get("http://" + addr + "/page/after")
	require.NoError(t, err)
	reply.Body.Close()
	assert.Equal(t, 200, reply.StatusCode)
}

// Shutdown must end although fiber does not know its sockets, and sockets end
// when whoever serves them closes them.
func TestShutdownWithOpenSockets(t *testing.T) {
	var mu sync.Mutex
	var open []*websocket.Conn
	addr, app := start(t, func(ws *websocket.Conn) {
		mu.Lock()
		open = append(open, ws)
		mu.Unlock()
		echo(ws)
	})
	ws := dial(t, addr, nil)
	require.Eventually(t, func() bool { mu.Lock(); defer mu.Unlock(); return len(open) == 1 }, 5*time.Second, time.Millisecond)
	require.NoError(t, app.ShutdownWithTimeout(5*time.Second))
	mu.Lock()
	require.NoError(t, open[0].Close())
	mu.Unlock()
	_, _, err := ws.ReadMessage()
	assert.Error(t, err)
}
