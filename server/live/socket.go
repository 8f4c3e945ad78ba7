package live

import (
	"bytes"
	"encoding/json"
	"sync"
	"time"

	"github.com/gorilla/websocket"
)

// maxReason is what a close frame has room for (RFC 6455, section 5.5: 125
// bytes with the two of the code).
const maxReason = 123

// socket is one open connection.
type socket struct {
	ws     *websocket.Conn
	limits Limits
	device string // set once, by the hub
	queue  chan []byte
	once   sync.Once
	over   chan struct{} // closed when the socket is to end
}

func newSocket(ws *websocket.Conn, limits Limits) *socket {
	return &socket{ws: ws, limits: limits, queue: make(chan []byte, limits.Queue), over: make(chan struct{})}
}

// push queues a frame and never waits: a socket whose queue is full is dropped.
func (s *socket) push(frame []byte) {
	select {
	case <-s.over:
		return
	default:
	}
	select {
	case s.queue <- frame:
	default:
		go s.finish(websocket.CloseTryAgainLater, errSlow)
	}
}

// first reads the frame that a socket opens with, strictly and in time, and
// reports whether it was there and of its shape.
func (s *socket) first(into any) bool {
	s.ws.SetReadLimit(s.limits.Frame)
	// An error here shows as an error of the read that follows.
	_ = s.ws.SetReadDeadline(time.Now().Add(s.limits.Hello))
	kind, text, err := s.ws.ReadMessage()
	if err != nil || kind != websocket.TextMessage {
		return false
	}
	strict := json.NewDecoder(bytes.NewReader(text))
	strict.DisallowUnknownFields()
	return strict.Decode(into) == nil && !strict.More()
}

// read runs until the socket ends. It also is what answers pings.
func (s *socket) read() {
	s.extend()
	s.ws.SetPongHandler(func(string) error { s.extend(); return nil })
	if _, _, err := s.ws.ReadMessage(); err == nil {
		s.finish(websocket.ClosePolicyViolation, errTalk)
	}
	s.drain()
}

// extend gives the peer time until its next answer to a ping, or to our close.
func (s *socket) extend() {
	patience := s.limits.Silence
	select {
	case <-s.over:
		patience = goodbye
	default:
	}
	// An error here shows as an error of the read that follows.
	_ = s.ws.SetReadDeadline(time.Now().Add(patience))
}

// drain reads until the peer has answered our close or its time is up. Closing
// on unread bytes would reset the connection, and the peer would lose the
// reason with it.
func (s *socket) drain() {
	for {
		if _, _, err := s.ws.NextReader(); err != nil {
			return
		}
	}
}

// write sends what is queued, and pings, until the socket ends.
func (s *socket) write() {
	ping := time.NewTicker(s.limits.Ping)
	defer ping.Stop()
	for {
		select {
		case <-s.over:
			return
		case frame := <-s.queue:
			_ = s.ws.SetWriteDeadline(time.Now().Add(s.limits.Write))
			if s.ws.WriteMessage(websocket.TextMessage, frame) != nil {
				s.finish(websocket.CloseTryAgainLater, errSlow)
				return
			}
		case <-ping.C:
			if s.ws.WriteControl(websocket.PingMessage, nil, time.Now().Add(s.limits.Write)) != nil {
				s.finish(websocket.CloseTryAgainLater, errSlow)
				return
			}
		}
	}
}

// finish says why the socket ends and lets the reading side end with it. It may
// be called from any goroutine; the first call counts.
func (s *socket) finish(code int, why error) {
	s.once.Do(func() {
		close(s.over)
		s.farewell(code, why)
	})
}

// farewell sends the close frame. A peer that takes nothing has its connection
// cut; any other has a moment to answer.
func (s *socket) farewell(code int, why error) {
	reason := ""
	if why != nil {
		reason = why.Error()
	}
	if len(reason) > maxReason {
		reason = reason[:maxReason]
	}
	frame := websocket.FormatCloseMessage(code, reason)
	if s.ws.WriteControl(websocket.CloseMessage, frame, time.Now().Add(closePatience)) != nil {
		_ = s.ws.Close()
		return
	}
	_ = s.ws.SetReadDeadline(time.Now().Add(goodbye))
}

// Chosen by us: how long a close frame may wait for a writer that is stuck, and
// the peer's answer for the peer.
const (
	closePatience = 200 * time.Millisecond
	goodbye       = time.Second
)
