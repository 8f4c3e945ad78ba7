package serve

import (
	"container/list"
	"crypto/tls"
	"errors"
	"net"
	"sync"
	"syscall"
	"time"

	"github.com/valyala/fasthttp"
)

// Whoever opens connections and says nothing could take every place of the HTTP
// server, or every file that the system lets it open, and keep a class out or end
// the server: it gives up at the first connection that it cannot accept. So a new
// connection costs the place of the one that has been silent longest, and a system
// that is out of files is waited for. Sockets are not counted here: they have
// their own bounds (server/live).

// spare is how many places stay free for those that are being cut (chosen by us).
const spare = 256

// places are the connections that wait or have a request answered.
type places struct {
	most int

	mu   sync.Mutex
	line *list.List // of net.Conn, the one that has been silent longest first
	at   map[net.Conn]*list.Element
}

func newPlaces(most int) *places {
	return &places{most: most, line: list.New(), at: map[net.Conn]*list.Element{}}
}

// changed is told by the HTTP server what became of a connection.
func (p *places) changed(conn net.Conn, state fasthttp.ConnState) {
	switch state {
	case fasthttp.StateNew:
		if p.add(conn) > p.most {
			p.makeRoom()
		}
	case fasthttp.StateActive:
		p.spoke(conn)
	case fasthttp.StateHijacked, fasthttp.StateClosed:
		p.drop(conn)
	}
}

func (p *places) add(conn net.Conn) (now int) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.at[conn] = p.line.PushBack(conn)
	return p.line.Len()
}

func (p *places) spoke(conn net.Conn) {
	p.mu.Lock()
	defer p.mu.Unlock()
	if own, ok := p.at[conn]; ok {
		p.line.MoveToBack(own)
	}
}

func (p *places) drop(conn net.Conn) {
	p.mu.Lock()
	defer p.mu.Unlock()
	if own, ok := p.at[conn]; ok {
		p.line.Remove(own)
		delete(p.at, conn)
	}
}

// makeRoom cuts the connection that has been silent longest.
func (p *places) makeRoom() {
	p.mu.Lock()
	first := p.line.Front()
	p.mu.Unlock()
	if first == nil {
		return
	}
	conn := first.Value.(net.Conn)
	p.drop(conn)
	cut(conn)
}

// clear cuts the connections that have never said anything, or all.
func (p *places) clear(all bool) {
	p.mu.Lock()
	var out []net.Conn
	for conn := range p.at {
		own, ok := plain(conn).(*lingerConn)
		if all || ok && !own.said.Load() {
			out = append(out, conn)
		}
	}
	p.mu.Unlock()
	for _, conn := range out {
		cut(conn)
	}
}

// cut closes a connection at once: nobody is owed an answer on it.
func cut(conn net.Conn) {
	conn = plain(conn)
	if own, ok := conn.(*lingerConn); ok {
		conn = own.TCPConn
	}
	_ = conn.Close() // it may have gone by itself
}

// plain is what lies under TLS.
func plain(conn net.Conn) net.Conn {
	if over, ok := conn.(*tls.Conn); ok {
		return over.NetConn()
	}
	return conn
}

// patient is a listener that waits where the system has no more files, or the
// other side went before it was accepted, and makes room meanwhile.
type patient struct {
	net.Listener
	makeRoom func()
}

// How long a patient listener waits, at first and at most (chosen by us).
const (
	firstWait = time.Millisecond
	mostWait  = 100 * time.Millisecond
)

func (l patient) Accept() (net.Conn, error) {
	for wait := firstWait; ; wait = min(2*wait, mostWait) {
		conn, err := l.Listener.Accept()
		if err == nil || !passing(err) {
			return conn, err
		}
		l.makeRoom()
		time.Sleep(wait)
	}
}

// passing reports whether an error says nothing of the listener itself.
func passing(err error) bool {
	for _, it := range []error{syscall.EMFILE, syscall.ENFILE, syscall.ENOBUFS, syscall.ENOMEM, syscall.ECONNABORTED} {
		if errors.Is(err, it) {
			return true
		}
	}
	return false
}
