// Package serve puts the server together: store, desk, classes, live sockets,
// checker of answers and web app, started and stopped in the right order.
package serve

import (
	"cmp"
	"context"
	"crypto/tls"
	"errors"
	"io/fs"
	"log/slog"
	"net"
	"os"
	"path/filepath"
	"sync"
	"time"

	"github.com/gofiber/fiber/v2"

	"lintel/engine"
	"lintel/quiz"
	"lintel/quiz/session"
	"lintel/server/class"
	"lintel/server/desk"
	"lintel/server/httpapi"
	"lintel/server/keep"
	"lintel/server/live"
	"lintel/server/store"
	"lintel/server/verdict"
)

// DefaultAddr is reachable from this machine only: opening it to a network is
// for its keeper to decide.
const DefaultAddr = "127.0.0.1:8080"

// stopPatience is how long running requests may take to end (chosen by us).
const stopPatience = 10 * time.Second

// Config says where to serve, and by which content.
type Config struct {
	Addr string // host:port; port 0 takes a free one
	Data string // folder of the store, made when missing

	Site      fs.FS
	Engine    string
	Content   string
	Validated bool
	Score     func(quiz.Answer) (quiz.Verdict, error)
	// Item works out a scene with every right reply to its asks; Choices are the
	// families, and Says puts a sentence of the content into words.
	Item    func(quiz.Scene) (quiz.Item, [][]quiz.Reply, error)
	Choices []session.Choice
	Says    func(language string) func(key string) string

	TLSCert     string // files of an own certificate; empty for plain http
	TLSKey      string
	BehindHTTPS bool // a proxy on this machine ends TLS and says so

	Free       func() (bytes uint64, known bool) // on the disk; nil means what the system says
	PhraseCost desk.Cost                         // of working out a pass phrase; the zero value means desk.DefaultCost

	Log *slog.Logger
	Now func() time.Time
}

// Main is one running server.
type Main struct {
	config   Config
	store    *store.Store
	hub      *live.Hub
	rooms    *live.Rooms
	desk     *desk.Desk
	classes  *class.Classes
	checker  *verdict.Checker
	app      *fiber.App
	listener net.Listener
	serving  net.Listener // the listener with what lies over it
	places   *places
	keeper   *keep.Listener

	stopChecks context.CancelFunc
	running    sync.WaitGroup
	failed     chan error
	closing    sync.Once
	closed     error
}

// Run opens the store and listens; it returns when requests are answered. The
// error says in one sentence what is in the way. Call Close in the end.
func Run(config Config) (*Main, error) {
	m := &Main{config: config, failed: make(chan error, 1)}
	if err := m.open(); err != nil {
		return nil, errors.Join(err, m.Close())
	}
	m.start()
	return m, nil
}

func (m *Main) open() (err error) {
	if err := os.MkdirAll(m.config.Data, 0o700); err != nil {
		return engine.Bad(m.config.Data, "cannot be made ("+err.Error()+")", "choose a data folder that this user may write with -data")
	}
	if err := m.openStore(filepath.Join(m.config.Data, store.FileName)); err != nil {
		return err
	}
	if err := m.openClasses(); err != nil {
		return err
	}
	version := live.Version{Engine: m.config.Engine, Content: m.config.Content}
	m.hub = live.New(m.store, version, live.DefaultLimits, m.config.Log)
	m.checker = verdict.New(m.store, m.config.Engine, m.config.Content, m.config.Score, m.config.Log)
	m.app, err = httpapi.New(httpapi.Config{
		Store: m.store, Site: m.config.Site,
		Engine: m.config.Engine, Content: m.config.Content, Validated: m.config.Validated,
		Desk: m.desk, Classes: m.classes, Viewers: m.rooms, Says: m.config.Says,
		Free: m.free, Acked: m.acked, Socket: m.hub.Serve, SignedOut: m.signedOut,
		Now: m.config.Now, Log: m.config.Log,
		Addresses: func() []string { return Addresses(m.Addr(), m.config.TLSCert != "") }, BehindHTTPS: m.config.BehindHTTPS,
	})
	if err != nil {
		return err
	}
	if err := m.listen(); err != nil {
		return err
	}
	if m.keeper, err = keep.Listen(m.config.Data, m.store, m.desk, m.config.Log); err != nil {
		// Backing up while running is then off; serving is not.
		m.config.Log.Warn("no door for backup, export and check while running", "err", err)
		m.keeper = nil
	}
	return nil
}

// openStore opens the store, without the bytes of what was erased since the last
// start. Where they cannot be taken out now they are the next time: serving does
// not wait for that.
func (m *Main) openStore(path string) (err error) {
	var compacted bool
	var left error
	if _, err := os.Stat(path); err == nil {
		compacted, left = store.CompactErased(path)
	}
	// Whether the file is ours at all is said once, by Open.
	if m.store, err = store.Open(path, store.Options{Now: m.config.Now}); err != nil {
		return err
	}
	switch {
	case left != nil:
		m.config.Log.Warn("what was erased is still in free pages of the store", "err", left)
	case compacted:
		m.config.Log.Info("what was erased has left the file of the store", "file", path)
	}
	return nil
}

// openClasses makes what instructors work with, and reads in the classes that
// were going on.
func (m *Main) openClasses() (err error) {
	c := &m.config
	m.desk = desk.New(m.store, c.Now, cmp.Or(c.PhraseCost, desk.DefaultCost))
	if err := m.desk.Sweep(); err != nil {
		return err
	}
	m.classes, err = class.New(class.Config{
		Store: m.store, Desk: m.desk, Engine: c.Engine, Content: c.Content, Make: c.Item, Choices: c.Choices, Now: c.Now, Log: c.Log,
	})
	if err != nil {
		return err
	}
	m.rooms = live.NewRooms(m.classes, c.Choices, live.DefaultRoomLimits, c.Now, c.Log)
	m.classes.Tell(m.rooms.Changed)
	return nil
}

// listen takes the address, and with certificate files ends TLS there.
func (m *Main) listen() error {
	ending, err := certified(m.config.TLSCert, m.config.TLSKey)
	if err != nil {
		return err
	}
	if m.listener, err = net.Listen("tcp", m.config.Addr); err != nil {
		return engine.Bad(m.config.Addr, "cannot be listened on ("+err.Error()+")", "choose another address with -addr")
	}
	m.places = newPlaces(m.app.Config().Concurrency - spare)
	m.app.Server().ConnState = m.places.changed
	m.serving = linger(patient{m.listener, m.places.makeRoom})
	if ending != nil {
		m.serving = tls.NewListener(m.serving, ending)
	}
	return nil
}

func (m *Main) start() {
	checks, stop := context.WithCancel(context.Background())
	m.stopChecks = stop
	m.running.Go(func() { m.checker.Run(checks) })
	m.running.Go(func() {
		if err := m.app.Listener(m.serving); err != nil {
			m.failed <- err
		}
	})
	if m.keeper != nil {
		m.running.Go(m.keeper.Serve)
	}
}

// free is what the disk has left.
func (m *Main) free() (bytes uint64, known bool) {
	if m.config.Free != nil {
		return m.config.Free()
	}
	return m.store.Free()
}

// acked is told of every durable batch.
func (m *Main) acked(device string, seq uint64) {
	m.hub.Acked(device, seq)
	m.checker.Wake()
}

// signedOut is told of every device that is somebody else's now, or nobody's.
func (m *Main) signedOut(device string) {
	m.hub.SignedOut(device)
	m.rooms.SignedOut(device)
}

// Addr is where the server listens.
func (m *Main) Addr() net.Addr { return m.listener.Addr() }

// Desk is the instructors' side of the server.
func (m *Main) Desk() *desk.Desk { return m.desk }

// Classes are the classes of the server.
func (m *Main) Classes() *class.Classes { return m.classes }

// Viewers counts the live sockets of classes.
func (m *Main) Viewers() int { return m.rooms.Count() }

// SetUpCode is the one-time code by which the first chief is made, or empty when
// there is one.
func (m *Main) SetUpCode() (string, error) { return m.desk.SetUpCode() }

// Failed delivers the error by which listening ended, if it does.
func (m *Main) Failed() <-chan error { return m.failed }

// Close stops: sockets are told first, as fiber does not know them; requests
// that run are answered; then what was promised is written and the file let go.
func (m *Main) Close() error {
	m.closing.Do(func() { m.closed = m.close() })
	return m.closed
}

func (m *Main) close() error {
	var all []error
	if m.stopChecks != nil {
		m.stopChecks()
	}
	if m.keeper != nil {
		all = append(all, m.keeper.Close())
	}
	if m.hub != nil {
		m.hub.Close()
	}
	if m.rooms != nil {
		m.rooms.Close()
	}
	if m.listener != nil {
		all = append(all, m.stopListening())
	}
	m.running.Wait()
	if m.store != nil {
		all = append(all, m.store.Close())
	}
	return errors.Join(all...)
}

// stopListening lets requests that run end, and no connection hold it up that has
// none: browsers open some to be ready.
func (m *Main) stopListening() error {
	patience, cancel := context.WithTimeout(context.Background(), stopPatience)
	defer cancel()
	m.places.clear(false)
	err := m.app.ShutdownWithContext(patience)
	if errors.Is(err, context.DeadlineExceeded) {
		m.config.Log.Warn("requests that had not ended were cut off at the stop")
		m.places.clear(true)
		err = nil
	}
	// fiber closes the listener only once it has begun to accept. Stopped in the
	// moment before, it would begin after and never end.
	if closed := m.listener.Close(); !errors.Is(closed, net.ErrClosed) {
		err = errors.Join(err, closed)
	}
	return err
}
