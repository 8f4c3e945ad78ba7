package crowd

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"net/http"
	"strconv"
	"strings"
	"sync"
	"sync/atomic"
	"time"

	"github.com/gorilla/websocket"
)

// Phone is one phone of a class.
type Phone struct {
	Device, Secret string
	Seq            uint64 // of the last event sent

	mu   sync.Mutex
	ws   *websocket.Conn
	deaf atomic.Bool   // it does not read
	seen atomic.Uint64 // the highest seq of a view it holds
	over chan struct{} // closed when the socket ended
	size atomic.Int64  // bytes of the last view
	back bool          // a frame said less than what it held: a repeat or worse
}

// Device n of the bench: not random, so that a store can be filled beforehand.
func Device(n int) *Phone {
	return &Phone{Device: fmt.Sprintf("%032x", n+1), Secret: strings.Repeat(fmt.Sprintf("%08x", n+1), 8)}
}

// Authorization is the header by which the phone signs in.
func (p *Phone) Authorization() string { return "Device " + p.Device + ":" + p.Secret }

// Register makes the device known.
func (p *Phone) Register(ctx context.Context, s *Site) error {
	return s.Call(ctx, "POST", "api/v1/devices", "", map[string]any{"v": 1, "device": p.Device, "secret": p.Secret, "call_sign": "Engine " + strings.TrimLeft(p.Device, "0")}, nil)
}

// Join takes a place in the class by the QR code's token.
func (p *Phone) Join(ctx context.Context, c *Class) error {
	return c.Call(ctx, "POST", "api/v1/join", p.Authorization(), map[string]any{"v": 1, "token": c.Token, "call_signs": map[string]string{"a": "Engine " + strings.TrimLeft(p.Device, "0")}}, nil)
}

// Arrival is told of every view that comes in.
type Arrival func(p *Phone, seq uint64, at time.Time)

// Connect opens the phone's socket to a class and reads until it ends.
func (p *Phone) Connect(ctx context.Context, c *Class, arrived Arrival) error {
	hello := map[string]any{"role": "phone", "device": p.Device, "secret": p.Secret, "last": p.seen.Load()}
	return p.Dial(ctx, c.URL+"api/v1/classes/"+c.ID+"/live", hello, arrived)
}

// Dial opens a socket with a first frame.
func (p *Phone) Dial(ctx context.Context, at string, hello any, arrived Arrival) error {
	dialer := websocket.Dialer{TLSClientConfig: trusting(), ReadBufferSize: 1024, WriteBufferSize: 256, HandshakeTimeout: 20 * time.Second}
	ws, reply, err := dialer.DialContext(ctx, "ws"+strings.TrimPrefix(at, "http"), http.Header{})
	if err != nil {
		return err
	}
	reply.Body.Close()
	if hello != nil {
		if err := ws.WriteJSON(hello); err != nil {
			return errors.Join(err, ws.Close())
		}
	}
	over := make(chan struct{})
	p.mu.Lock()
	p.ws, p.over = ws, over
	p.mu.Unlock()
	go p.read(ws, over, arrived)
	return nil
}

func (p *Phone) read(ws *websocket.Conn, over chan struct{}, arrived Arrival) {
	defer close(over)
	for !p.deaf.Load() {
		_, text, err := ws.ReadMessage()
		at := time.Now()
		if err != nil {
			return
		}
		seq, isView := seqOf(text)
		if !isView {
			continue
		}
		if seq < p.seen.Load() {
			p.back = true
		}
		p.seen.Store(seq)
		p.size.Store(int64(len(text)))
		if arrived != nil {
			arrived(p, seq, at)
		}
	}
	<-make(chan struct{}) // deaf: the socket stays open and full
}

// seqOf reads a frame no further than it must, so that thousands of phones on
// this machine measure the server and not the reading of JSON.
func seqOf(text []byte) (seq uint64, isView bool) {
	if !bytes.Contains(text[:min(40, len(text))], []byte(`"view"`)) && !bytes.Contains(text[:min(40, len(text))], []byte(`"current"`)) {
		return 0, false
	}
	_, rest, found := bytes.Cut(text, []byte(`"seq":`))
	if !found {
		return 0, false
	}
	end := bytes.IndexAny(rest, ",}")
	if end < 0 {
		return 0, false
	}
	seq, err := strconv.ParseUint(string(rest[:end]), 10, 64)
	return seq, err == nil
}

// Seen is the highest seq the phone holds.
func (p *Phone) Seen() uint64 { return p.seen.Load() }

// Bytes is the size of the last view that came.
func (p *Phone) Bytes() int { return int(p.size.Load()) }

// Repeated reports whether any frame went back behind what was held.
func (p *Phone) Repeated() bool { return p.back }

// Over is closed when the phone's socket has ended.
func (p *Phone) Over() <-chan struct{} {
	p.mu.Lock()
	defer p.mu.Unlock()
	return p.over
}

// Deafen makes the phone stop reading while its socket stays open.
func (p *Phone) Deafen() { p.deaf.Store(true) }

// Cut drops the connection without a word, as a phone does that loses its signal.
func (p *Phone) Cut() {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.ws != nil {
		_ = p.ws.NetConn().Close()
	}
}

// Answer commits an answer to a scene of a class and returns how long it took
// until the server said that it is durable.
func (p *Phone) Answer(ctx context.Context, c *Class, engine string, body any) (time.Duration, error) {
	text, err := json.Marshal(body)
	if err != nil {
		return 0, err
	}
	p.Seq++
	event := map[string]any{
		"v": 1, "id": fmt.Sprintf("%s%016x", p.Device[16:], p.Seq), "device": p.Device, "seq": p.Seq,
		"engine": engine, "t_client": time.Now().UnixMilli(), "kind": "answer", "body": json.RawMessage(text),
	}
	began := time.Now()
	var told struct{ Acked uint64 }
	if err := c.Call(ctx, "POST", "api/v1/events", p.Authorization(), map[string]any{"v": 1, "events": []any{event}}, &told); err != nil {
		return 0, err
	}
	if told.Acked < p.Seq {
		return 0, fmt.Errorf("crowd: %s: event %d sent, %d acknowledged", p.Device, p.Seq, told.Acked)
	}
	return time.Since(began), nil
}
