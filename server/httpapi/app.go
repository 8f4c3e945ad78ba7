package httpapi

import (
	"io/fs"
	"log/slog"
	"net/http"
	"time"

	"github.com/gofiber/fiber/v2"
	"github.com/gorilla/websocket"

	"lintel/quiz"
)

// Limits of one request, chosen by us: the app sends at most half a megabyte at
// a time, and a phone on a poor line has ten seconds to send it.
const (
	maxBody     = 1 << 20
	maxHeaders  = 8 << 10
	readTimeout = 10 * time.Second
	writeTime   = 30 * time.Second
	idleTimeout = 60 * time.Second
	maxConns    = 16_384
)

// Config is what the app needs of the rest of the server.
type Config struct {
	Store     quiz.Store
	Site      fs.FS  // the web app, index.html at its root
	Engine    string // versions that the server scores by
	Content   string
	Validated bool // whether the fire model has passed its validation

	Acked  func(device string, seq uint64) // called after each durable batch
	Socket func(*websocket.Conn)           // serves one live socket until it ends
	Now    func() time.Time
	Log    *slog.Logger
}

// api is the app's handlers.
type api struct {
	Config
	site   *site
	limits *limits
}

// New returns the app, ready to be given a listener.
func New(config Config) (*fiber.App, error) {
	site, err := loadSite(config.Site)
	if err != nil {
		return nil, err
	}
	a := &api{Config: config, site: site, limits: newLimits(config.Now)}
	app := fiber.New(fiber.Config{
		AppName:               "Lintel",
		DisableStartupMessage: true,
		StrictRouting:         true,
		CaseSensitive:         true,
		BodyLimit:             maxBody,
		ReadBufferSize:        maxHeaders,
		ReadTimeout:           readTimeout,
		WriteTimeout:          writeTime,
		IdleTimeout:           idleTimeout,
		Concurrency:           maxConns,
		ErrorHandler:          a.failEarly,
	})
	app.Use(a.logged, a.recovered, secured)
	a.routes(app)
	return app, nil
}

// routes is every path there is.
func (a *api) routes(app *fiber.App) {
	app.Get("/healthz", a.healthz)
	app.Get("/readyz", a.readyz)

	v1 := app.Group("/api/v1", private, sameOrigin)
	v1.Post("/devices", jsonOnly, a.postDevice)
	v1.Post("/events", jsonOnly, a.signedIn, a.postEvents)
	v1.Get("/records", a.signedIn, a.getRecords)
	v1.Get("/state", a.signedIn, a.getState)
	v1.Get("/live", a.getLive)
	app.All("/api/*", func(*fiber.Ctx) error { return fiber.ErrNotFound })

	app.Get("/*", a.getSite)
}

// healthz says that the process answers.
func (a *api) healthz(c *fiber.Ctx) error {
	c.Set(fiber.HeaderCacheControl, "no-store")
	return c.Status(http.StatusOK).JSON(fiber.Map{"alive": true})
}

// readyz says that what comes in can be stored.
func (a *api) readyz(c *fiber.Ctx) error {
	c.Set(fiber.HeaderCacheControl, "no-store")
	if err := a.Store.Ready(); err != nil {
		return err
	}
	return c.Status(http.StatusOK).JSON(fiber.Map{"ready": true})
}
