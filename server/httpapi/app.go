package httpapi

import (
	"io/fs"
	"log/slog"
	"net/http"
	"time"

	"github.com/gofiber/fiber/v2"
	"github.com/gorilla/websocket"

	"lintel/quiz"
	"lintel/quiz/session"
	"lintel/server/class"
	"lintel/server/desk"
	"lintel/server/handover"
)

// Limits of one request, chosen by us: the app sends at most half a megabyte at
// a time, and a phone on a poor line has ten seconds to send it.
const (
	maxBody     = 1 << 20
	maxHeaders  = 4 << 10 // the reader of each live socket is as large
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

	Desk    *desk.Desk
	Classes *class.Classes
	Viewers Viewers
	Says    func(language string) func(key string) string // puts a sentence of the content into words, for paper

	Free   func() (bytes uint64, known bool) // what the disk of the store has left
	Acked  func(device string, seq uint64)   // called after each durable batch
	Socket func(*websocket.Conn)             // serves one live socket until it ends
	// SignedOut is called when a device's secret is another now, or it was erased.
	SignedOut func(device string)
	Now       func() time.Time
	Log       *slog.Logger

	Addresses   func() []string // under which phones reach this server, best first
	BehindHTTPS bool            // a proxy on this machine ends TLS and says so
}

// Viewers are the live sockets of classes.
type Viewers interface {
	Serve(ws *websocket.Conn, class string, board bool)
	Connected(class string) int
	Expel(class string, role session.Viewer)
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
		// No form is ever sent here: fasthttp would take it apart, into files too.
		DisablePreParseMultipartForm: true,
		ErrorHandler:                 a.failEarly,
	})
	// What was torn may hold a secret, which is not to stand in the log.
	app.Server().SecureErrorLogMessage = true
	app.Server().Handler = headed(app.Server().Handler)
	app.Server().HeaderReceived = a.sized
	handover.Allow(app)
	app.Use(a.logged, a.recovered, a.secured)
	a.routes(app)
	return app, nil
}

// routes is every path there is.
func (a *api) routes(app *fiber.App) {
	app.Get("/healthz", a.healthz)
	app.Get("/readyz", a.readyz)

	v1 := app.Group("/api/v1", private, sameOrigin)
	a.deviceRoutes(v1)
	a.deskRoutes(v1)
	a.classRoutes(v1)
	app.All("/api/*", func(*fiber.Ctx) error { return fiber.ErrNotFound })

	app.Get("/*", a.getSite)
}

// deviceRoutes are for a person's own device.
func (a *api) deviceRoutes(v1 fiber.Router) {
	v1.Post("/devices", jsonOnly, a.postDevice)
	v1.Delete("/devices", a.signedIn, a.deleteDevice)
	v1.Post("/devices/move", jsonOnly, a.signedIn, a.postMove)
	v1.Post("/devices/claim", jsonOnly, a.postMoved)
	v1.Post("/events", jsonOnly, a.signedIn, a.spared, a.postEvents)
	v1.Get("/records", a.signedIn, a.getRecords)
	v1.Get("/state", a.signedIn, a.getState)
	v1.Get("/live", a.getLive)
	v1.Post("/claim", jsonOnly, a.signedIn, a.postClaim)
	v1.Get("/seats", a.signedIn, a.getSeats)
	v1.Get("/seats/records", a.signedIn, a.getOwnSeatRecords)
	v1.Post("/join", jsonOnly, a.postJoin)
}

// deskRoutes are for instructors.
func (a *api) deskRoutes(v1 fiber.Router) {
	v1.Get("/door", a.getDoor)
	v1.Post("/setup", jsonOnly, a.trusted, a.postSetUp)
	v1.Post("/signin", jsonOnly, a.trusted, a.postSignIn)
	v1.Post("/reset", jsonOnly, a.trusted, a.postReset)
	v1.Post("/signout", jsonOnly, a.trusted, a.postSignOut)
	v1.Get("/me", a.instructor, a.getMe)
	v1.Post("/phrase", jsonOnly, a.instructor, a.postPhrase)
	v1.Post("/instructors/invite", jsonOnly, a.instructor, a.postInvite)
	v1.Get("/instructors", a.instructor, a.getInstructors)
	v1.Put("/instructors/:id", jsonOnly, a.instructor, a.putInstructor)
	v1.Get("/audit", a.instructor, a.getAudit)
	v1.Get("/rosters", a.instructor, a.getRosters)
	v1.Post("/rosters", jsonOnly, a.instructor, a.saveRoster)
	v1.Put("/rosters/:id", jsonOnly, a.instructor, a.saveRoster)
	v1.Delete("/rosters/:id", a.instructor, a.deleteRoster)
	v1.Get("/rosters/:id/export.csv", a.instructor, a.getRosterCSV)
	v1.Post("/rosters/:id/seats/:seat/claim", jsonOnly, a.instructor, a.postClaimCode)
	v1.Get("/rosters/:id/seats/:seat/records", a.instructor, a.getSeatRecords)
	v1.Get("/sets", a.instructor, a.getSets)
	v1.Post("/sets", jsonOnly, a.instructor, a.saveSet)
	v1.Put("/sets/:id", jsonOnly, a.instructor, a.saveSet)
	v1.Delete("/sets/:id", a.instructor, a.deleteSet)
}

// classRoutes are for whoever leads a class: an instructor, for some of them a
// phone that was handed it.
func (a *api) classRoutes(v1 fiber.Router) {
	v1.Post("/lead", jsonOnly, a.postLead)
	v1.Get("/classes", a.instructor, a.getClasses)
	v1.Post("/classes", jsonOnly, a.instructor, a.postClass)
	v1.Get("/classes/:id", a.leads, a.getClass)
	v1.Get("/classes/:id/live", a.getClassLive)
	v1.Post("/classes/:id/do", jsonOnly, a.leads, a.postAct)
	v1.Get("/classes/:id/people/:person", a.leads, a.getPerson)
	v1.Get("/classes/:id/scenes/:scene", a.leads, a.getScene)
	v1.Get("/classes/:id/report", a.instructor, a.getReport)
	v1.Get("/classes/:id/report.csv", a.instructor, a.getReportCSV)
	v1.Get("/classes/:id/report.pdf", a.instructor, a.getReportPDF)
	v1.Post("/classes/:id/code", jsonOnly, a.instructor, a.postCode)
	v1.Post("/classes/:id/lead", jsonOnly, a.instructor, a.postOfferLead)
	v1.Get("/classes/:id/leads", a.instructor, a.getLeads)
	v1.Delete("/classes/:id/leads/:lead", a.instructor, a.deleteLead)
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
