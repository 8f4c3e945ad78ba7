package live

import (
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
	case s.queue <- frame:
	default:
		go s.finish(websocket.CloseTryAgainLater, errSlow)
	}
}

// read runs until the socket ends. It also is what answers pings.
func (s *socket) read() {
	s.extend()
	s.ws.SetPongHandler(func(string) error { s.extend(); return nil })
	if _, _, err := s.ws.ReadMessage(); err == nil {
		s.finish(websocket.ClosePolicyViolation, errTalk)
	}
}

func (s *socket) extend() {
	// An error here shows as an error of the read that follows.
	_ = s.ws.SetReadDeadline(time.Now().Add(s.limits.Silence))
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

// finish ends the socket from any goroutine, once, and does not wait for the
// other side.
func (s *socket) finish(code int, why error) {
	s.once.Do(func() {
		close(s.over)
		s.end(code, why)
	})
}

// end says why and closes. The close frame goes out only if it can at once: a
// peer that takes nothing has its connection cut.
func (s *socket) end(code int, why error) {
	reason := ""
	if why != nil {
		reason = why.Error()
	}
	if len(reason) > maxReason {
		reason = reason[:maxReason]
	}
	_ = s.ws.WriteControl(websocket.CloseMessage, websocket.FormatCloseMessage(code, reason), time.Now().Add(closePatience))
	_ = s.ws.Close()
}

// closePatience is how long a close frame may wait for a writer that is stuck
// (chosen by us).
const closePatience = 200 * time.Millisecond
