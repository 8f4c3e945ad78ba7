package handover

import (
	"net"
	"sync/atomic"
	"time"
)

// lateConn writes to the connection and reads from a reader that is given later
// and taken away again.
type lateConn struct {
	net.Conn
	reader atomic.Pointer[net.Conn]
}

func (c *lateConn) open(reader net.Conn) { c.reader.Store(&reader) }
func (c *lateConn) shut()                { c.reader.Store(nil) }

// Read fails while there is no reader: fasthttp uses its readers again for other
// connections, whose bytes must never turn up here.
func (c *lateConn) Read(into []byte) (int, error) {
	reader := c.reader.Load()
	if reader == nil {
		return 0, net.ErrClosed
	}
	return (*reader).Read(into)
}

// Close also ends a read that is waiting: a connection that closes in two steps
// would hold the reader until the second.
func (c *lateConn) Close() error {
	err := c.Conn.Close()
	_ = c.Conn.SetReadDeadline(time.Unix(1, 0))
	return err
}
