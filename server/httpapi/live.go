package httpapi

import (
	"net/http"
	"sync"
	"time"

	"github.com/gofiber/fiber/v2"
	"github.com/gorilla/websocket"

	"lintel/server/handover"
)

// upgrader makes sockets with small buffers, and lends those for writing for as
// long as something is written.
var upgrader = websocket.Upgrader{
	HandshakeTimeout: 5 * time.Second, // chosen by us
	ReadBufferSize:   256,             // a hello is all that comes in
	WriteBufferSize:  1024,
	WriteBufferPool:  &sync.Pool{},
	CheckOrigin:      func(*http.Request) bool { return true }, // sameOrigin has looked already
}

// getLive hands the connection to the live sockets, which ask for the device's
// secret themselves: a browser cannot send it in a header here.
func (a *api) getLive(c *fiber.Ctx) error {
	return handover.Upgrade(c, upgrader, a.Socket)
}
