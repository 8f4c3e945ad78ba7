package handover_test

import (
	"fmt"
	"io"
	"net"
	"net/http"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// FuzzBytesAfterTheHandshake sends anything at all in one packet with, and in
// pieces after, the handshake. The server must neither fall nor mix it into
// another connection.
func FuzzBytesAfterTheHandshake(f *testing.F) {
	addr, _ := start(f, echo)
	f.Add([]byte(nil), uint8(0))
	f.Add(maskedText, uint8(0))
	f.Add(append(append([]byte{}, maskedText...), maskedText...), uint8(3))
	f.Add([]byte{0x81, 0x7f, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff}, uint8(2)) // a length beyond all bounds
	f.Add([]byte{0x88, 0x80, 0, 0, 0, 0}, uint8(1))                                     // a close frame
	f.Add([]byte("GET /page/pipelined HTTP/1.1\r\nHost: x\r\n\r\n"), uint8(7))
	f.Fuzz(func(t *testing.T, after []byte, cut uint8) {
		conn, err := net.Dial("tcp", addr)
		require.NoError(t, err)
		defer conn.Close()
		require.NoError(t, conn.SetDeadline(time.Now().Add(5*time.Second)))
		at := min(int(cut), len(after))
		_, err = conn.Write(append([]byte(fmt.Sprintf(handshake, addr)), after[:at]...))
		require.NoError(t, err)
		_, _ = conn.Write(after[at:])
		_ = conn.(*net.TCPConn).CloseWrite()
		_, _ = io.Copy(io.Discard, conn)

		reply, err := http.Get("http://" + addr + "/page/alive")
		require.NoError(t, err)
		defer reply.Body.Close()
		text, err := io.ReadAll(reply.Body)
		require.NoError(t, err)
		require.Equal(t, "page alive", string(text))
	})
}
