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

// outgoing is a frame on its way, to one socket or prepared once for many.
type outgoing struct {
	text     []byte
	prepared *websocket.PreparedMessage
}

func (o *outgoing) to(ws *websocket.Conn) error {
	if o.prepared != nil {
		return ws.WritePreparedMessage(o.prepared)
	}
	return ws.WriteMessage(websocket.TextMessage, o.text)
}

// socket is one open connection. While nothing is to be sent it has one goroutine,
// that which reads: a writing one is there for as long as frames wait, and a timer
// sends the pings.
type socket struct {
	ws     *websocket.Conn
	limits *Limits
	device string // set once, by the hub
	once   sync.Once

	mu      sync.Mutex
	next    func() *outgoing // what waits, first first; nil when nothing does; called with mu held
	writing bool
	over    bool // the socket is to end
	ping    *time.Timer
}

// update changes what waits and has it sent, unless the socket is to end.
func (s *socket) update(change func()) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.over {
		return
	}
	change()
	if !s.writing {
		s.writing = true
		go s.write()
	}
}

// write sends what waits until nothing does, or the socket ends.
func (s *socket) write() {
	for {
		s.mu.Lock()
		frame := s.next()
		if s.over || frame == nil {
			s.writing = false
			s.mu.Unlock()
			return
		}
		s.mu.Unlock()
		_ = s.ws.SetWriteDeadline(time.Now().Add(s.limits.Write))
		if frame.to(s.ws) != nil {
			s.finish(websocket.CloseTryAgainLater, errSlow)
		}
	}
}

// pinging sends a ping every now and then until the socket ends.
func (s *socket) pinging() {
	s.mu.Lock()
	defer s.mu.Unlock()
	if !s.over {
		s.ping = time.AfterFunc(s.limits.Ping, s.beat)
	}
}

func (s *socket) beat() {
	if s.ws.WriteControl(websocket.PingMessage, nil, time.Now().Add(s.limits.Write)) != nil {
		s.finish(websocket.CloseTryAgainLater, errSlow)
		return
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	if !s.over {
		s.ping.Reset(s.limits.Ping)
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
	if _, _, err := s.ws.NextReader(); err == nil {
		s.finish(websocket.ClosePolicyViolation, errTalk)
	}
	s.drain()
}

// extend gives the peer time until its next answer to a ping, or to our close.
func (s *socket) extend() {
	patience := s.limits.Silence
	if s.isOver() {
		patience = goodbye
	}
	// An error here shows as an error of the read that follows.
	_ = s.ws.SetReadDeadline(time.Now().Add(patience))
}

func (s *socket) isOver() bool {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.over
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

// finish says why the socket ends and lets the reading side end with it. It may
// be called from any goroutine; the first call counts.
func (s *socket) finish(code int, why error) {
	s.once.Do(func() {
		s.end()
		s.farewell(code, why)
	})
}

// cut ends the socket without a word.
func (s *socket) cut() {
	s.once.Do(func() {
		s.end()
		_ = s.ws.Close()
	})
}

// end lets nothing more be sent.
func (s *socket) end() {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.over = true
	if s.ping != nil {
		s.ping.Stop()
	}
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

// aside does something on a goroutine of its own and waits for it, so that the
// stack it took goes back when it is done: a socket's own goroutine keeps what it
// ever took for as long as the socket lives.
func aside(do func()) {
	var fault any
	done := make(chan struct{})
	go func() {
		defer close(done)
		defer func() { fault = recover() }()
		do()
	}()
	if <-done; fault != nil {
		panic(fault)
	}
}
