package live

import (
	"errors"
	"log/slog"
	"sync"
	"time"

	"github.com/gorilla/websocket"

	"lintel/quiz"
	"lintel/quiz/session"
)

// RoomLimits are the bounds of the sockets of classes. All are chosen by us.
type RoomLimits struct {
	Limits
	Coalesce time.Duration // least time between two broadcasts of one class
	Walls    int           // projectors of one class: they open without a sign-in
}

// DefaultRoomLimits suit several large classes at once. A phone that takes
// nothing for Write is dropped; until then it holds back the newest view only.
var DefaultRoomLimits = RoomLimits{
	Limits: Limits{
		Sockets: 12_000, Waiting: 4096, PerDevice: 4,
		Hello: 5 * time.Second, Write: 5 * time.Second, Ping: 25 * time.Second, Silence: 60 * time.Second,
		Frame: 1024,
	},
	Coalesce: 100 * time.Millisecond, Walls: 64,
}

// Source is the classes that rooms show.
type Source interface {
	// Admit returns an error when the viewer may not look at the class. Of a board
	// the caller has made sure before.
	Admit(class string, hello session.Hello) error
	State(class string) (session.State, error)
	Door(class string) *session.Door
}

// Rooms are the live sockets of classes: phones, boards, leads and projectors.
type Rooms struct {
	source  Source
	choices []session.Choice
	limits  RoomLimits
	now     func() time.Time
	log     *slog.Logger

	mu      sync.Mutex
	proved  int              // those in a room
	all     map[*viewer]bool // those too that have not said who they are
	waiting waiting          // those that have not
	rooms   map[string]*room
	closed  bool
	running sync.WaitGroup
}

// NewRooms returns rooms without viewers.
func NewRooms(source Source, choices []session.Choice, limits RoomLimits, now func() time.Time, log *slog.Logger) *Rooms {
	return &Rooms{source: source, choices: choices, limits: limits, now: now, log: log, all: map[*viewer]bool{},
		waiting: newWaiting(limits.Waiting), rooms: map[string]*room{}}
}

var (
	errViewerHello = errors.New("the first frame must say who looks: see server/httpapi/README.md")
	errNotAdmitted = errors.New("you may not look at this class: join it first")
)

// Serve runs a socket until it ends. Board says that an instructor is signed in
// on it. Called on the goroutine of the socket.
func (r *Rooms) Serve(ws *websocket.Conn, class string, board bool) {
	v := newViewer(ws, &r.limits.Limits)
	line := r.line(class)
	if err := r.admit(v, line); err != nil {
		v.finish(websocket.CloseTryAgainLater, err)
		v.drain()
		_ = ws.Close()
		return
	}
	defer r.running.Done()
	defer r.leave(v, line)
	in := false
	aside(func() { in = r.enter(v, class, line, board) })
	if in {
		v.read()
	} else {
		v.drain()
	}
}

// line is where a socket waits until it has said who it is: that of its class, or
// that of all which ask for a class that is none.
func (r *Rooms) line(class string) string {
	if _, err := r.source.State(class); err != nil {
		return ""
	}
	return class
}

// enter lets a viewer say who it is, and into the class's room.
func (r *Rooms) enter(v *viewer, class, line string, board bool) bool {
	hello, code, err := r.hello(v, class, board)
	if err != nil {
		v.finish(code, err)
		return false
	}
	if v.role = hello.Role; v.role == session.Phone {
		v.device = hello.Device // proved; what any other says of a device is not
	}
	if err := r.join(v, class, line, hello.Last); err != nil {
		if !errors.Is(err, errCrowded) {
			err = errStopping
		}
		v.finish(websocket.CloseTryAgainLater, err)
		return false
	}
	v.pinging()
	return true
}

// hello reads the first frame and asks whether the viewer may look.
func (r *Rooms) hello(v *viewer, class string, board bool) (hello session.Hello, code int, err error) {
	if !v.first(&hello) {
		return hello, websocket.ClosePolicyViolation, errViewerHello
	}
	if hello.Role == session.Board && !board {
		return hello, websocket.ClosePolicyViolation, errNotAdmitted
	}
	if err := r.source.Admit(class, hello); err != nil {
		r.log.Info("viewer refused", "class", class, "role", hello.Role, "why", err)
		if errors.Is(err, quiz.ErrClosed) || errors.Is(err, quiz.ErrBusy) {
			return hello, websocket.CloseTryAgainLater, errStopping
		}
		return hello, websocket.ClosePolicyViolation, errNotAdmitted
	}
	return hello, 0, nil
}

func (r *Rooms) admit(v *viewer, line string) error {
	r.mu.Lock()
	defer r.mu.Unlock()
	switch {
	case r.closed:
		return errStopping
	case r.proved >= r.limits.Sockets:
		return errCrowded
	}
	r.all[v] = true
	r.running.Add(1)
	if late := r.waiting.add(line, &v.socket); late != nil {
		go late.cut()
	}
	return nil
}

// join puts a viewer into the class's room and tells it where the class stands.
func (r *Rooms) join(v *viewer, class, line string, last uint64) error {
	in, err := r.place(v, class, line)
	if err != nil {
		return err
	}
	oldest := in.crowded(v, r.limits.PerDevice)
	if v.device != "" {
		in.devices[v.device]++
		in.here = true
		in.touch()
	}
	in.mu.Unlock()
	if oldest != nil {
		go oldest.finish(websocket.ClosePolicyViolation, errReplaced)
	}
	return in.greet(v, last)
}

// place gives a viewer its place and returns its room, locked.
func (r *Rooms) place(v *viewer, class, line string) (*room, error) {
	r.mu.Lock()
	defer r.mu.Unlock()
	r.waiting.remove(line, &v.socket)
	switch {
	case r.closed:
		return nil, errStopping
	case r.proved >= r.limits.Sockets:
		return nil, errCrowded
	}
	in := r.rooms[class]
	if in == nil {
		in = &room{rooms: r, id: class, viewers: map[*viewer]bool{}, devices: map[string]int{}, views: map[session.Viewer]*sent{}, own: map[string]bool{}}
		r.rooms[class] = in
	}
	in.mu.Lock()
	if v.role == session.Projector && in.walls() >= r.limits.Walls {
		in.mu.Unlock()
		return nil, errCrowded
	}
	r.proved++
	v.room = in
	in.viewers[v] = true
	return in, nil
}

// walls counts the projectors.
func (r *room) walls() (n int) {
	for v := range r.viewers {
		if v.role == session.Projector {
			n++
		}
	}
	return n
}

// crowded is the oldest socket of a device that has opened one too many, or nil.
func (r *room) crowded(v *viewer, most int) (oldest *viewer) {
	if v.device == "" || r.devices[v.device] < most {
		return nil
	}
	for other := range r.viewers {
		if other != v && other.device == v.device && (oldest == nil || other.since.Before(oldest.since)) {
			oldest = other
		}
	}
	return oldest
}

func (r *Rooms) leave(v *viewer, line string) {
	v.finish(websocket.CloseNormalClosure, nil)
	_ = v.ws.Close()
	r.mu.Lock()
	defer r.mu.Unlock()
	delete(r.all, v)
	r.waiting.remove(line, &v.socket)
	in := v.room
	if in == nil {
		return
	}
	r.proved--
	in.mu.Lock()
	defer in.mu.Unlock()
	delete(in.viewers, v)
	if v.device != "" {
		if in.devices[v.device]--; in.devices[v.device] == 0 {
			delete(in.devices, v.device)
		}
		in.here = true
		in.touch()
	}
	if len(in.viewers) == 0 {
		delete(r.rooms, in.id)
	}
}

// Changed tells the viewers of a class that it has changed: with the devices
// whose own part has, and whether the way in has.
func (r *Rooms) Changed(class string, devices []string, door bool) {
	r.mu.Lock()
	in := r.rooms[class]
	r.mu.Unlock()
	if in == nil {
		return
	}
	in.mu.Lock()
	defer in.mu.Unlock()
	for _, device := range devices {
		if in.devices[device] > 0 {
			in.own[device] = true
		}
	}
	in.door = in.door || door
	in.here = in.here || len(devices) > 0
	in.touch()
}

// Connected counts the phones of a class that are connected.
func (r *Rooms) Connected(class string) int {
	r.mu.Lock()
	in := r.rooms[class]
	r.mu.Unlock()
	if in == nil {
		return 0
	}
	in.mu.Lock()
	defer in.mu.Unlock()
	return len(in.devices)
}

// Count returns how many sockets are open.
func (r *Rooms) Count() int {
	r.mu.Lock()
	defer r.mu.Unlock()
	return len(r.all)
}

// Expel ends the sockets of viewers that keep no longer says may look: a lead
// that was revoked, a session that was ended. Without a class it is those of all
// classes.
func (r *Rooms) Expel(class string, role session.Viewer) {
	r.mu.Lock()
	defer r.mu.Unlock()
	for v := range r.all {
		if v.room != nil && (class == "" || v.room.id == class) && v.role == role {
			go v.finish(websocket.CloseServiceRestart, errStopping)
		}
	}
}

// SignedOut ends the sockets of a device whose secret is another now, or that was
// erased.
func (r *Rooms) SignedOut(device string) {
	r.mu.Lock()
	defer r.mu.Unlock()
	for v := range r.all {
		if v.room != nil && v.device == device {
			go v.finish(websocket.ClosePolicyViolation, errNotAdmitted)
		}
	}
}

// Close ends every socket with "going away" and waits for them. No socket is
// admitted afterwards.
func (r *Rooms) Close() {
	r.mu.Lock()
	r.closed = true
	for v := range r.all {
		go v.finish(websocket.CloseGoingAway, errStopping)
	}
	r.mu.Unlock()
	r.running.Wait()
}
