package serve_test

import (
	"bufio"
	"fmt"
	"net"
	"net/http"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/server/store/storetest"
)

// declares opens connections that each say a large body is coming, and sends none of
// it. It counts the answers of a status that come without.
func (s *server) declares(connections, bytes, status int, header string) (refused *atomic.Int32) {
	s.t.Helper()
	refused = &atomic.Int32{}
	var ready sync.WaitGroup
	for range connections {
		conn, err := net.Dial("tcp", strings.TrimPrefix(s.url, "http://"))
		require.NoError(s.t, err)
		s.t.Cleanup(func() { conn.Close() })
		_, err = fmt.Fprintf(conn, "POST /api/v1/events HTTP/1.1\r\nHost: lintel\r\n%sContent-Type: application/json\r\nContent-Length: %d\r\n\r\n", header, bytes)
		require.NoError(s.t, err)
		ready.Go(func() {
			_ = conn.SetReadDeadline(time.Now().Add(2 * time.Second))
			if got, err := http.ReadResponse(bufio.NewReader(conn), nil); err == nil && got.StatusCode == status {
				refused.Add(1)
			}
		})
	}
	ready.Wait()
	return refused
}

// No room is made for a body because its length was declared: a stranger's is refused
// from its headers, and of those whom the server knows as many are let send a large
// one as it has memory for. Control: one of 8 KiB is waited for from anybody, and an
// answer's size from a device at any time.
func TestADeclaredBodyTakesNoRoom(t *testing.T) {
	s := start(t)
	s.register(1)
	known := fmt.Sprintf("Authorization: Device %s:%s\r\n", storetest.ID(1), storetest.Secret(1))
	forged := fmt.Sprintf("Authorization: Device %s:%s\r\n", storetest.ID(1), storetest.Secret(2))
	assert.EqualValues(t, 20, s.declares(20, 1<<20, 403, "").Load(), "strangers")
	assert.EqualValues(t, 20, s.declares(20, 9<<10, 401, forged).Load(), "a device that is not known here hears so, and registers")
	assert.EqualValues(t, 20, s.declares(20, 1<<20, 403, "Cookie: lintel=x; __Host-lintel=x\r\n").Load(), "nor with a cookie")
	got := s.do("POST", "/api/v1/sets", strings.NewReader(strings.Repeat("x", 9<<10)))
	assert.Equal(t, 401, got.status, "whose sign-in has ended signs in again")
	assert.Zero(t, s.declares(20, 8<<10, 413, "").Load())
	assert.Zero(t, s.declares(20, 1<<20, 503, known).Load(), "there is room for some")
	most := s.declares(420, 1<<20, 503, known).Load()
	assert.Positive(t, most, "but not for any number")
	assert.Less(t, most, int32(420), "and for some more as time goes by")
	assert.Zero(t, s.declares(20, 32<<10, 503, known).Load(), "an answer's size passes all the same")
	assert.EqualValues(t, 20, s.declares(20, 1<<20+1, 413, known).Load(), "what is too large for anybody is never taken")
}
