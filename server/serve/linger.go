package serve

import (
	"io"
	"net"
	"sync"
	"sync/atomic"
	"time"
)

// When a body is too large the answer goes out while the client is still
// sending. Closing then would make the kernel reset the connection, and the
// client would lose the answer with it. So a connection is closed in two steps:
// our side ends, what still comes in is thrown away for a moment, and only then
// is it let go. Both bounds are chosen by us.
const (
	lingerTime  = 2 * time.Second
	lingerBytes = 256 << 20
)

type lingering struct{ net.Listener }

func linger(l net.Listener) net.Listener { return lingering{l} }

func (l lingering) Accept() (net.Conn, error) {
	conn, err := l.Listener.Accept()
	if tcp, ok := conn.(*net.TCPConn); ok {
		return &lingerConn{TCPConn: tcp}, nil
	}
	return conn, err
}

type lingerConn struct {
	*net.TCPConn
	once sync.Once
	said atomic.Bool // that anything has come in
}

func (c *lingerConn) Read(p []byte) (n int, err error) {
	n, err = c.TCPConn.Read(p)
	if n > 0 {
		c.said.Store(true)
	}
	return n, err
}

// Close returns at once; the rest happens behind it.
func (c *lingerConn) Close() (err error) {
	c.once.Do(func() {
		if err = c.CloseWrite(); err != nil {
			err = c.TCPConn.Close()
			return
		}
		// Set here and not behind, so that whoever closes can still cut it short.
		_ = c.SetReadDeadline(time.Now().Add(lingerTime))
		go c.drain()
	})
	return err
}

func (c *lingerConn) drain() {
	_, _ = io.CopyN(io.Discard, c.TCPConn, lingerBytes)
	_ = c.TCPConn.Close()
}
