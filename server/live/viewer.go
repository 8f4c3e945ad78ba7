package live

import (
	"sync"
	"time"

	"github.com/gorilla/websocket"

	"lintel/quiz/session"
)

// slot is where a frame of one kind waits. Every frame says the whole of what it
// is about, so a newer one takes the place of an older that was not sent yet, and
// nothing ever queues up for a viewer that is slow.
type slot int

const (
	viewSlot slot = iota
	placesSlot
	hereSlot
	doorSlot
	slots
)

// viewer is one socket that looks at a class.
type viewer struct {
	socket
	role   session.Viewer
	since  time.Time
	room   *room
	signal chan struct{} // something waits

	mu      sync.Mutex
	waiting [slots]*websocket.PreparedMessage
}

func newViewer(ws *websocket.Conn, limits Limits) *viewer {
	v := &viewer{signal: make(chan struct{}, 1), since: time.Now()}
	v.ws, v.limits, v.over = ws, limits, make(chan struct{})
	return v
}

// show has a frame sent.
func (v *viewer) show(at slot, message *websocket.PreparedMessage) {
	v.mu.Lock()
	v.waiting[at] = message
	v.mu.Unlock()
	v.wake()
}

func (v *viewer) wake() {
	select {
	case v.signal <- struct{}{}:
	default:
	}
}

// take is what waits, the view first.
func (v *viewer) take() [slots]*websocket.PreparedMessage {
	v.mu.Lock()
	defer v.mu.Unlock()
	taken := v.waiting
	v.waiting = [slots]*websocket.PreparedMessage{}
	return taken
}

// write sends what waits, and pings, until the socket ends.
func (v *viewer) write() {
	ping := time.NewTicker(v.limits.Ping)
	defer ping.Stop()
	for {
		select {
		case <-v.over:
			return
		case <-v.signal:
			for _, message := range v.take() {
				if message == nil {
					continue
				}
				_ = v.ws.SetWriteDeadline(time.Now().Add(v.limits.Write))
				if v.ws.WritePreparedMessage(message) != nil {
					v.finish(websocket.CloseTryAgainLater, errSlow)
					return
				}
			}
		case <-ping.C:
			if v.ws.WriteControl(websocket.PingMessage, nil, time.Now().Add(v.limits.Write)) != nil {
				v.finish(websocket.CloseTryAgainLater, errSlow)
				return
			}
		}
	}
}
