package handover

import (
	"net"
	"time"
)

// aheadConn is a connection with what was read of it before it was handed over.
type aheadConn struct {
	net.Conn
	ahead []byte
}

// longAgo is a deadline that has passed.
var longAgo = time.Unix(1, 0)

// take moves what reader holds of the connection into ahead. With the deadline
// passed nothing waits: a read gives what is held, and fails when nothing is.
func (c *aheadConn) take(reader net.Conn) {
	_ = c.SetReadDeadline(longAgo)
	for some := make([]byte, 512); ; {
		n, err := reader.Read(some)
		c.ahead = append(c.ahead, some[:n]...)
		if err != nil {
			break
		}
	}
	_ = c.SetReadDeadline(time.Time{})
}

// Read gives what was read ahead, then what comes. A fault of the connection that
// take has met shows again here.
func (c *aheadConn) Read(into []byte) (int, error) {
	if len(c.ahead) == 0 {
		return c.Conn.Read(into)
	}
	n := copy(into, c.ahead)
	if c.ahead = c.ahead[n:]; len(c.ahead) == 0 {
		c.ahead = nil
	}
	return n, nil
}

// Close also ends a read that is waiting: a connection that closes in two steps
// would hold the reader until the second.
func (c *aheadConn) Close() error {
	err := c.Conn.Close()
	_ = c.SetReadDeadline(longAgo)
	return err
}
