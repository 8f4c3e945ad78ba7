package live

import "github.com/gorilla/websocket"

// deviceSocket is a device's own socket: its frames wait in a short queue.
type deviceSocket struct {
	socket
	queue []*outgoing
}

func newDeviceSocket(ws *websocket.Conn, limits *Limits) *deviceSocket {
	s := &deviceSocket{socket: socket{ws: ws, limits: limits}}
	s.next = s.take
	return s
}

// push queues a frame and never waits: a socket whose queue is full is dropped.
func (s *deviceSocket) push(frame []byte) {
	s.update(func() {
		if len(s.queue) == s.limits.Queue {
			go s.finish(websocket.CloseTryAgainLater, errSlow)
			return
		}
		s.queue = append(s.queue, &outgoing{text: frame})
	})
}

func (s *deviceSocket) take() *outgoing {
	if len(s.queue) == 0 {
		return nil
	}
	frame := s.queue[0]
	if s.queue = s.queue[1:]; len(s.queue) == 0 {
		s.queue = nil
	}
	return frame
}
