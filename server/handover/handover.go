// Package handover hands the connection of a fiber request to gorilla/websocket.
//
// gorilla wants to take the connection over by http.Hijacker, which the fasthttp
// under fiber does not offer inside a handler: there, a connection is given away
// only after the handler has returned, through a callback. So gorilla writes its
// side of the handshake straight to the connection and reads nothing. The callback
// takes what fasthttp has read already, which are the bytes that came in the same
// packet as the handshake, and returns at once: fasthttp then has its buffers and
// its request back, about 10 KiB that an idle socket would hold for its whole life.
//
// What follows from it, each covered by a test here:
//   - strings from fiber are borrowed and are copied into the http.Request;
//   - fasthttp must leave the connection open when the callback returns: Allow;
//   - fasthttp clears deadlines when it hands over: set them inside serve;
//   - fiber does not know connections it gave away: whoever serves them must
//     close them at shutdown.
package handover

import (
	"bufio"
	"errors"
	"log/slog"
	"net"
	"net/http"
	"net/url"
	"runtime/debug"
	"strings"

	"github.com/gofiber/fiber/v2"
	"github.com/gorilla/websocket"
)

// Refusal is a handshake that gorilla refused: a status and gorilla's reason,
// for the log. Nothing has been written to the client.
type Refusal struct {
	Status int
	Reason string
}

// Error gives the reason.
func (r *Refusal) Error() string { return "handover: " + r.Reason }

// Allow lets an app give connections away. Called once, before it listens.
func Allow(app *fiber.App) { app.Server().KeepHijackedConns = true }

// Upgrade turns the request into a socket and returns; serve then runs on its
// own goroutine, and the socket is closed when it returns. A refused handshake
// comes back as a *Refusal. The fiber.Ctx must not be used inside serve, and the
// app must have been told by Allow.
func Upgrade(c *fiber.Ctx, upgrader websocket.Upgrader, serve func(*websocket.Conn)) error {
	conn := &aheadConn{Conn: c.Context().Conn()}
	w := &hijacker{conn: conn, header: http.Header{}}
	var refusal *Refusal
	upgrader.Error = func(_ http.ResponseWriter, _ *http.Request, status int, reason error) {
		refusal = &Refusal{Status: status, Reason: reason.Error()}
	}
	socket, err := upgrader.Upgrade(w, request(c), nil)
	if refusal != nil {
		return refusal
	}
	if err != nil {
		return &Refusal{Status: http.StatusBadRequest, Reason: err.Error()}
	}
	ctx := c.Context()
	ctx.SetStatusCode(http.StatusSwitchingProtocols)
	ctx.HijackSetNoResponse(true)
	ctx.Hijack(func(reader net.Conn) {
		conn.take(reader)
		go run(socket, serve)
	})
	return nil
}

// run serves a socket to its end. A panic on this goroutine would end the whole
// server.
func run(socket *websocket.Conn, serve func(*websocket.Conn)) {
	defer func() {
		if fault := recover(); fault != nil {
			slog.Error("socket failed", "fault", fault, "stack", string(debug.Stack()))
		}
	}()
	defer socket.Close()
	serve(socket)
}

// request copies what gorilla reads of a request.
func request(c *fiber.Ctx) *http.Request {
	from := &c.Context().Request
	header := http.Header{}
	from.Header.VisitAll(func(name, value []byte) {
		header.Add(string(name), string(value))
	})
	return &http.Request{
		Method: strings.Clone(c.Method()),
		URL:    &url.URL{Path: strings.Clone(c.Path())},
		Proto:  "HTTP/1.1", ProtoMajor: 1, ProtoMinor: 1,
		Header:     header,
		Host:       string(from.Header.Host()),
		RemoteAddr: c.Context().RemoteAddr().String(),
	}
}

// hijacker is the ResponseWriter that gorilla takes the connection from.
type hijacker struct {
	conn   net.Conn
	header http.Header
}

func (h *hijacker) Header() http.Header { return h.header }
func (h *hijacker) WriteHeader(int)     {}
func (h *hijacker) Write([]byte) (int, error) {
	return 0, errors.New("handover: a handshake has no body")
}

// Hijack gives gorilla the connection with nothing read ahead: what has been
// read already stays in fasthttp's reader until aheadConn takes it.
func (h *hijacker) Hijack() (net.Conn, *bufio.ReadWriter, error) {
	return h.conn, bufio.NewReadWriter(bufio.NewReaderSize(h.conn, 16), bufio.NewWriterSize(h.conn, 16)), nil
}
