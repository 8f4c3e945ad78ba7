package handover_test

import (
	"bufio"
	"crypto/tls"
	"fmt"
	"io"
	"net"
	"net/http"
	"net/http/httptest"
	"testing"
	"time"

	"github.com/gofiber/fiber/v2"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/server/handover"
)

// Under TLS too what comes with the handshake is delivered, and what comes later:
// looking for bytes read ahead must not spoil the connection for reading.
func TestFrameInTheSameRecordIsDelivered(t *testing.T) {
	borrowed := httptest.NewTLSServer(http.NotFoundHandler()) // for its certificate
	t.Cleanup(borrowed.Close)
	app := fiber.New(fiber.Config{DisableStartupMessage: true})
	handover.Allow(app)
	app.Get("/ws", func(c *fiber.Ctx) error { return handover.Upgrade(c, upgrader, echo) })
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	done := make(chan error, 1)
	go func() {
		done <- app.Listener(tls.NewListener(listener, &tls.Config{Certificates: borrowed.TLS.Certificates}))
	}()
	t.Cleanup(func() {
		assert.NoError(t, app.ShutdownWithTimeout(5*time.Second))
		assert.NoError(t, <-done)
	})

	trusted := borrowed.Client().Transport.(*http.Transport).TLSClientConfig.Clone()
	conn, err := tls.Dial("tcp", listener.Addr().String(), trusted)
	require.NoError(t, err)
	defer conn.Close()
	_, err = conn.Write(append([]byte(fmt.Sprintf(handshake, "127.0.0.1")), maskedText...))
	require.NoError(t, err)
	require.NoError(t, conn.SetReadDeadline(time.Now().Add(5*time.Second)))
	reader := bufio.NewReader(conn)
	reply, err := http.ReadResponse(reader, nil)
	require.NoError(t, err)
	defer reply.Body.Close()
	hello := []byte{0x81, 0x05, 'H', 'e', 'l', 'l', 'o'} // RFC 6455, section 5.7
	frame := make([]byte, len(hello))
	_, err = io.ReadFull(reader, frame)
	require.NoError(t, err)
	assert.Equal(t, hello, frame)

	for range 3 {
		_, err = conn.Write(maskedText)
		require.NoError(t, err)
		_, err = io.ReadFull(reader, frame)
		require.NoError(t, err)
		assert.Equal(t, hello, frame)
	}
}
