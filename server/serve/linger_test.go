package serve_test

import (
	"bufio"
	"fmt"
	"io"
	"net"
	"net/http"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A simple client writes all of its body before it reads anything. It must
// still get the sentence that refuses the body, not a broken connection.
func TestARefusedBodyIsStillAnswered(t *testing.T) {
	s := start(t)
	conn, err := net.Dial("tcp", s.Addr().String())
	require.NoError(t, err)
	defer conn.Close()
	const size = 30 << 20
	fmt.Fprintf(conn, "POST /api/v1/events HTTP/1.1\r\nHost: x\r\nContent-Type: application/json\r\nContent-Length: %d\r\n\r\n", size)
	piece := make([]byte, 1<<20)
	for range size / len(piece) {
		_, err := conn.Write(piece)
		require.NoError(t, err)
	}
	require.NoError(t, conn.SetReadDeadline(time.Now().Add(5*time.Second)))
	reply, err := http.ReadResponse(bufio.NewReader(conn), nil)
	require.NoError(t, err)
	defer reply.Body.Close()
	text, err := io.ReadAll(reply.Body)
	require.NoError(t, err)
	assert.Equal(t, 413, reply.StatusCode)
	assert.Contains(t, string(text), `"body","what":"is larger than this server takes"`)
}
