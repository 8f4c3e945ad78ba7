package serve

import (
	"errors"
	"fmt"
	"net"
	"net/http"
	"os"
	"syscall"
	"testing"
	"time"

	"github.com/gofiber/fiber/v2"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/valyala/fasthttp"
)

const few = 20

// crowded is an HTTP server with a few places; bounded, a new connection costs the
// place of the one that has been silent longest.
func crowded(t *testing.T, bounded bool) (address string) {
	t.Helper()
	app := fiber.New(fiber.Config{DisableStartupMessage: true, Concurrency: few})
	app.Get("/", func(c *fiber.Ctx) error { return c.SendString("here") })
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	if bounded {
		app.Server().ConnState = newPlaces(few / 2).changed
	}
	ended := make(chan error, 1)
	go func() { ended <- app.Listener(linger(listener)) }()
	t.Cleanup(func() {
		require.NoError(t, app.ShutdownWithTimeout(time.Second))
		require.NoError(t, <-ended)
	})
	return listener.Addr().String()
}

// honest asks for a page a few times, each time anew, and counts the answers.
func honest(t *testing.T, address string) (answered int) {
	t.Helper()
	client := http.Client{Timeout: 2 * time.Second, Transport: &http.Transport{DisableKeepAlives: true}}
	for range 10 {
		reply, err := client.Get("http://" + address + "/")
		if err != nil {
			continue
		}
		if reply.StatusCode == http.StatusOK {
			answered++
		}
		require.NoError(t, reply.Body.Close())
	}
	return answered
}

// A stranger who opens connections and says nothing keeps nobody out. Control:
// without the bound nobody else gets in.
func TestSilentConnectionsKeepNobodyOut(t *testing.T) {
	for _, bounded := range []bool{true, false} {
		t.Run(fmt.Sprintf("bounded %v", bounded), func(t *testing.T) {
			address := crowded(t, bounded)
			for range 5 * few {
				silent, err := net.Dial("tcp", address)
				require.NoError(t, err)
				defer silent.Close()
			}
			time.Sleep(100 * time.Millisecond)
			assert.Equal(t, map[bool]int{true: 10, false: 0}[bounded], honest(t, address))
		})
	}
}

// Whoever talks keeps the place, and what has become a socket has none to lose.
func TestWhoTalksKeepsThePlace(t *testing.T) {
	p := newPlaces(3)
	come := func() (here, there net.Conn) {
		here, there = net.Pipe()
		t.Cleanup(func() { here.Close(); there.Close() })
		p.changed(here, fasthttp.StateNew)
		return here, there
	}
	lives := func(there net.Conn) bool {
		_ = there.SetReadDeadline(time.Now().Add(20 * time.Millisecond)) // a pipe that was cut takes none
		_, err := there.Read(make([]byte, 1))
		return errors.Is(err, os.ErrDeadlineExceeded)
	}
	socket, socketThere := come()
	p.changed(socket, fasthttp.StateHijacked)
	talking, talkingThere := come()
	_, silentThere := come()
	for range 3 {
		p.changed(talking, fasthttp.StateActive)
		come()
	}
	assert.True(t, lives(socketThere))
	assert.True(t, lives(talkingThere))
	assert.False(t, lives(silentThere))
	for range 3 {
		come()
	}
	assert.False(t, lives(talkingThere), "who falls silent loses it")
	assert.Len(t, p.at, 3)
	assert.Equal(t, 3, p.line.Len())
}

// outOfFiles fails to accept for a while, and then for good.
type outOfFiles struct {
	net.Listener
	left int
}

func (l *outOfFiles) Accept() (net.Conn, error) {
	if l.left--; l.left >= 0 {
		return nil, &net.OpError{Op: "accept", Err: os.NewSyscallError("accept4", syscall.EMFILE)}
	}
	return nil, net.ErrClosed
}

// A system without files to open ends no server; a listener that was closed does.
func TestOutOfFilesIsWaitedFor(t *testing.T) {
	freed := 0
	_, err := patient{&outOfFiles{left: 5}, func() { freed++ }}.Accept()
	require.ErrorIs(t, err, net.ErrClosed)
	assert.Equal(t, 5, freed)
	assert.False(t, passing(errors.New("broken")))
}
