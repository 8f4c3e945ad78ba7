// Package live holds the sockets of devices that are connected now, and tells
// them what has become of their events.
//
// Each socket has a reading goroutine, and a writing one while frames wait. A
// socket opens with a hello frame that proves the device; then the server pushes
// frames and the device sends nothing but control frames. Frames wait in a short
// queue: a device that does not keep up is dropped and rejoins, so that one stuck
// phone never holds up another. Nothing is lost by that, since every frame only
// repeats what the store knows.
package live

import (
	"errors"
	"log/slog"
	"slices"
	"sync"
	"time"

	"github.com/gorilla/websocket"

	"lintel/quiz"
	"lintel/quiz/session"
)

// Limits are the bounds of a hub. All are chosen by us.
type Limits struct {
	Sockets   int           // in all, of those that have said who they are
	Waiting   int           // of those that have not: one more costs the oldest its place
	PerDevice int           // a device that opens one more loses its oldest
	Queue     int           // frames waiting for one socket
	Hello     time.Duration // in which a socket must prove its device
	Write     time.Duration // in which a frame must be taken
	Ping      time.Duration // between two pings
	Silence   time.Duration // after which a socket that answers no ping is gone
	Frame     int64         // bytes of one incoming frame
}

// DefaultLimits suit a server for several academies.
var DefaultLimits = Limits{
	Sockets: 10_000, Waiting: 4096, PerDevice: 4, Queue: 32,
	Hello: session.HelloPatienceMS * time.Millisecond, Write: 5 * time.Second, Ping: 25 * time.Second, Silence: 60 * time.Second,
	Frame: 1024,
}

// Version names the rules that the server scores by.
type Version struct {
	Engine, Content string
}

// Store is what a hub asks of the store.
type Store interface {
	Authenticate(device, secret string) (quiz.Device, error)
	Acked(device string) (uint64, error)
}

// Hub is the set of open sockets. Make one with New.
type Hub struct {
	store   Store
	version Version
	limits  Limits
	log     *slog.Logger

	mu      sync.Mutex
	open    int // sockets, those that have not proved their device too
	proved  int
	sockets map[string][]*deviceSocket // by device, oldest first
	waiting waiting                    // not yet proved
	closed  bool
	running sync.WaitGroup
}

// New returns a hub without sockets.
func New(store Store, version Version, limits Limits, log *slog.Logger) *Hub {
	return &Hub{store: store, version: version, limits: limits, log: log,
		sockets: map[string][]*deviceSocket{}, waiting: newWaiting(limits.Waiting)}
}

var (
	errStopping = errors.New("the server is stopping: connect again in a moment")
	errCrowded  = errors.New("the server holds as many sockets as it accepts: connect again later")
	errReplaced = errors.New("this device has opened newer sockets")
	errSlow     = errors.New("frames were not taken in time: connect again")
	errHello    = errors.New("the first frame must be {device, secret}")
	errTalk     = errors.New("nothing but the hello frame is expected here")
)

// Serve runs a socket until it ends. Called on the goroutine of the socket.
func (h *Hub) Serve(ws *websocket.Conn) {
	s := newDeviceSocket(ws, &h.limits)
	if err := h.admit(s); err != nil {
		s.finish(websocket.CloseTryAgainLater, err)
		s.drain()
		_ = ws.Close()
		return
	}
	defer h.running.Done()
	defer h.leave(s)
	in := false
	aside(func() { in = h.enter(s) })
	if in {
		s.read()
	} else {
		s.drain()
	}
}

// enter lets a socket prove its device and join the device's others.
func (h *Hub) enter(s *deviceSocket) bool {
	device, err := h.hello(&s.socket)
	if err != nil {
		s.finish(websocket.ClosePolicyViolation, err)
		return false
	}
	if err := h.join(s, device); err != nil {
		s.finish(websocket.CloseTryAgainLater, err)
		return false
	}
	s.pinging()
	return true
}

// Acked tells a device's sockets how far its history is held. Frames may arrive
// out of order: the highest number counts.
func (h *Hub) Acked(device string, seq uint64) {
	frame := ackedFrame(seq)
	h.mu.Lock()
	sockets := slices.Clone(h.sockets[device])
	h.mu.Unlock()
	for _, s := range sockets {
		s.push(frame)
	}
}

// SignedOut ends the sockets of a device whose secret is another now, or that was
// erased.
func (h *Hub) SignedOut(device string) {
	h.mu.Lock()
	defer h.mu.Unlock()
	for _, s := range h.sockets[device] {
		go s.finish(websocket.ClosePolicyViolation, quiz.ErrWrongSecret)
	}
}

// Count returns how many sockets are open.
func (h *Hub) Count() int {
	h.mu.Lock()
	defer h.mu.Unlock()
	return h.open
}

// Close ends every socket with "going away" and waits for them. No socket is
// admitted afterwards.
func (h *Hub) Close() {
	h.mu.Lock()
	h.closed = true
	var all []*socket
	for _, sockets := range h.sockets {
		for _, s := range sockets {
			all = append(all, &s.socket)
		}
	}
	for _, line := range h.waiting.lines {
		all = append(all, line...)
	}
	h.mu.Unlock()
	for _, s := range all {
		go s.finish(websocket.CloseGoingAway, errStopping)
	}
	h.running.Wait()
}

func (h *Hub) admit(s *deviceSocket) error {
	h.mu.Lock()
	defer h.mu.Unlock()
	switch {
	case h.closed:
		return errStopping
	case h.proved >= h.limits.Sockets:
		return errCrowded
	}
	h.open++
	h.running.Add(1)
	if late := h.waiting.add("", &s.socket); late != nil {
		go late.cut()
	}
	return nil
}

// join puts a proved socket among its device's own and tells it where things
// stand. It joins before it asks, so that no acknowledgement falls between.
func (h *Hub) join(s *deviceSocket, device string) error {
	oldest, err := h.place(s, device)
	if err != nil {
		return err
	}
	if oldest != nil {
		go oldest.finish(websocket.ClosePolicyViolation, errReplaced)
	}
	s.push(versionFrame(h.version))
	acked, err := h.store.Acked(device)
	if err != nil {
		h.log.Error("acked not read", "device", device, "err", err)
		return nil
	}
	s.push(ackedFrame(acked))
	return nil
}

// place gives a proved socket its place, and returns the oldest of a device that
// has opened one too many, or nil.
func (h *Hub) place(s *deviceSocket, device string) (oldest *deviceSocket, err error) {
	h.mu.Lock()
	defer h.mu.Unlock()
	h.waiting.remove("", &s.socket)
	switch {
	case h.closed:
		return nil, errStopping
	case h.proved >= h.limits.Sockets:
		return nil, errCrowded
	}
	h.proved++
	s.device = device
	own := append(h.sockets[device], s)
	if len(own) > h.limits.PerDevice {
		oldest, own = own[0], own[1:]
	}
	h.sockets[device] = own
	return oldest, nil
}

func (h *Hub) leave(s *deviceSocket) {
	s.finish(websocket.CloseNormalClosure, nil)
	_ = s.ws.Close()
	h.mu.Lock()
	defer h.mu.Unlock()
	h.open--
	h.waiting.remove("", &s.socket)
	if s.device == "" {
		return
	}
	h.proved--
	own := h.sockets[s.device]
	if at := slices.Index(own, s); at >= 0 {
		own = slices.Delete(slices.Clone(own), at, at+1)
	}
	if len(own) == 0 {
		delete(h.sockets, s.device)
		return
	}
	h.sockets[s.device] = own
}
