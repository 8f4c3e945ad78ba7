package live

import (
	"encoding/json"
	"sync"
	"time"

	"github.com/gorilla/websocket"

	"lintel/quiz/session"
)

// room is the viewers of one class. It keeps what it last sent to each kind of
// viewer, spelled once for all of them.
type room struct {
	rooms *Rooms
	id    string

	mu      sync.Mutex
	viewers map[*viewer]bool
	devices map[string]int // phones that are connected, by device
	views   map[session.Viewer]*sent
	own     map[string]bool // devices whose own part has changed
	here    bool            // who is connected has changed
	door    bool            // how to join has changed
	planned bool            // a broadcast is on its way
	last    time.Time       // of the last broadcast
	upTo    uint64          // the newest state that was broadcast
}

// sent is the newest view of one kind of viewer.
type sent struct {
	seq  uint64
	upTo uint64 // the state it was last seen to be true of
	body []byte // the view alone, as JSON
}

// frame spells a view with what is true now: its number and the server's clock.
func (s *sent) frame(role session.Viewer, now time.Time) []byte {
	head := frame(struct {
		Kind  session.FrameKind `json:"kind"`
		Seq   uint64            `json:"seq"`
		NowMS int64             `json:"now_ms"`
	}{session.ViewFrame, s.seq, now.UnixMilli()})
	name := `,"` + string(part(role)) + `":`
	text := make([]byte, 0, len(head)+len(name)+len(s.body))
	text = append(text, head[:len(head)-1]...)
	text = append(append(text, name...), s.body...)
	return append(text, '}')
}

// part is the kind of view a viewer sees: a lead sees the board.
func part(role session.Viewer) session.Viewer {
	if role == session.Lead {
		return session.Board
	}
	return role
}

// touch plans a broadcast: at once when none was lately, else when its turn
// comes. However often a class changes, its viewers hear of it at most once in
// Coalesce. The caller holds mu.
func (r *room) touch() {
	if r.planned || len(r.viewers) == 0 {
		return
	}
	r.planned = true
	time.AfterFunc(max(0, r.rooms.limits.Coalesce-time.Since(r.last)), r.broadcast)
}

// broadcast sends what has changed to whom it concerns.
func (r *room) broadcast() {
	state, err := r.rooms.source.State(r.id)
	if err != nil {
		r.rooms.log.Error("class not shown", "class", r.id, "err", err)
	}
	r.mu.Lock()
	defer r.mu.Unlock()
	r.planned, r.last = false, time.Now()
	if err != nil {
		return
	}
	r.upTo = max(r.upTo, state.Seq)
	r.showViews(&state)
	r.showOwn(&state)
	r.showLeaders(&state)
}

// showViews sends each kind of view that is not as it was.
func (r *room) showViews(state *session.State) {
	wanted := map[session.Viewer]bool{}
	for v := range r.viewers {
		wanted[part(v.role)] = true
	}
	frames := map[session.Viewer]*outgoing{}
	for role := range wanted {
		if r.renew(role, state) {
			frames[role] = prepared(r.views[role].frame(role, r.rooms.now()))
		}
	}
	for v := range r.viewers {
		if f := frames[part(v.role)]; f != nil && v.greeted {
			v.show(viewSlot, f)
		}
	}
}

// renew draws a view and says whether it is another than was sent. A view keeps
// its number while it stays the same. A state older than one that was seen is
// passed over.
func (r *room) renew(role session.Viewer, state *session.State) bool {
	held := r.views[role]
	if held != nil && state.Seq <= held.upTo {
		return false
	}
	body := r.rooms.draw(role, state)
	if held != nil && string(held.body) == string(body) {
		held.upTo = state.Seq
		return false
	}
	r.views[role] = &sent{seq: state.Seq, upTo: state.Seq, body: body}
	return true
}

// showOwn sends the people on a phone to the phones where they have changed.
func (r *room) showOwn(state *session.State) {
	if len(r.own) == 0 {
		return
	}
	for v := range r.viewers {
		if v.greeted && v.role == session.Phone && r.own[v.device] {
			v.show(placesSlot, r.rooms.places(state, v.device))
		}
	}
	r.own = map[string]bool{}
}

// showLeaders tells those who lead who is connected, and them and the wall how to
// join.
func (r *room) showLeaders(state *session.State) {
	var here, door *outgoing
	if r.here {
		here = prepared(frame(r.hereFrame(state)))
	}
	if r.door {
		door = prepared(frame(r.doorFrame()))
	}
	r.here, r.door = false, false
	for v := range r.viewers {
		if !v.greeted {
			continue
		}
		if here != nil && part(v.role) == session.Board {
			v.show(hereSlot, here)
		}
		if door != nil && v.role != session.Phone {
			v.show(doorSlot, door)
		}
	}
}

func (r *room) hereFrame(state *session.State) session.Frame {
	out := session.Frame{Kind: session.HereFrame, Seq: state.Seq, NowMS: r.rooms.now().UnixMilli(), Here: []int{}}
	for _, p := range state.People {
		if p.Device != "" && r.devices[p.Device] > 0 {
			out.Here = append(out.Here, p.Number)
		}
	}
	return out
}

func (r *room) doorFrame() session.Frame {
	return session.Frame{Kind: session.DoorFrame, NowMS: r.rooms.now().UnixMilli(), Door: r.rooms.source.Door(r.id)}
}

// greet tells a viewer where the class stands. It has joined before, and whatever
// was broadcast between is told again, so that no change falls between.
func (r *room) greet(v *viewer, last uint64) error {
	state, err := r.rooms.source.State(r.id)
	if err != nil {
		return err
	}
	r.mu.Lock()
	defer r.mu.Unlock()
	v.greeted = true
	if state.Seq < r.upTo {
		r.own[v.device], r.here = true, true
		r.touch()
	}
	role := part(v.role)
	r.renew(role, &state)
	held := r.views[role]
	if last > 0 && last >= held.seq {
		v.show(viewSlot, alone(frame(session.Frame{Kind: session.CurrentFrame, Seq: held.seq, NowMS: r.rooms.now().UnixMilli()})))
	} else {
		v.show(viewSlot, alone(held.frame(role, r.rooms.now())))
	}
	switch v.role {
	case session.Phone:
		v.show(placesSlot, r.rooms.places(&state, v.device))
	case session.Board, session.Lead:
		v.show(hereSlot, alone(frame(r.hereFrame(&state))))
		v.show(doorSlot, alone(frame(r.doorFrame())))
	default:
		v.show(doorSlot, alone(frame(r.doorFrame())))
	}
	return nil
}

// alone is a frame for one socket.
func alone(text []byte) *outgoing { return &outgoing{text: text} }

// prepared is a frame for many, put into the bytes of the line once.
func prepared(text []byte) *outgoing {
	message, err := websocket.NewPreparedMessage(websocket.TextMessage, text)
	if err != nil {
		panic("live: " + err.Error()) // only for other kinds of message
	}
	return &outgoing{prepared: message}
}

// draw spells a view.
func (r *Rooms) draw(role session.Viewer, state *session.State) []byte {
	var view any
	switch role {
	case session.Phone:
		view = state.PhoneView()
	case session.Projector:
		view = state.ProjectorView()
	default:
		view = state.BoardView(r.choices)
	}
	text, err := json.Marshal(view)
	if err != nil {
		panic("live: " + err.Error()) // words and finite numbers only
	}
	return text
}

func (r *Rooms) places(state *session.State, device string) *outgoing {
	return alone(frame(session.Frame{Kind: session.PlacesFrame, Seq: state.Seq, NowMS: r.now().UnixMilli(), Places: state.PlaceViews(device)}))
}
