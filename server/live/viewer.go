package live

import (
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
	role    session.Viewer
	since   time.Time
	room    *room
	greeted bool // knows where the class stands, and hears of changes from here on; the room locks it
	waiting [slots]*outgoing
}

func newViewer(ws *websocket.Conn, limits *Limits) *viewer {
	v := &viewer{socket: socket{ws: ws, limits: limits}, since: time.Now()}
	v.next = v.take
	return v
}

// show has a frame sent.
func (v *viewer) show(at slot, frame *outgoing) {
	v.update(func() { v.waiting[at] = frame })
}

// take is the first of what waits, the view before all.
func (v *viewer) take() *outgoing {
	for at, frame := range v.waiting {
		if frame != nil {
			v.waiting[at] = nil
			return frame
		}
	}
	return nil
}
