package httpapi_test

import (
	"bytes"
	"encoding/json"
	"io"
	"io/fs"
	"log/slog"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"github.com/gofiber/fiber/v2"
	"github.com/gorilla/websocket"
	"github.com/stretchr/testify/require"

	"lintel/quiz"
	"lintel/server/class"
	"lintel/server/desk"
	"lintel/server/httpapi"
)

// fakeStore lets one device in and does what its fields say.
type fakeStore struct {
	quiz.Store // nil: what is not faked is not called
	append     func(string, []quiz.Event) (uint64, error)
	ready      func() error
}

var (
	device = strings.Repeat("a", 32)
	secret = strings.Repeat("b", 64)
)

func (f *fakeStore) Register(id, _, callSign string) (quiz.Device, error) {
	return quiz.Device{ID: id, CallSign: callSign}, nil
}

func (f *fakeStore) Authenticate(id, given string) (quiz.Device, error) {
	if given != secret {
		return quiz.Device{}, quiz.ErrWrongSecret
	}
	return quiz.Device{ID: id}, nil
}

func (f *fakeStore) Commit(id string, events []quiz.Event, _ []quiz.Line) (uint64, []quiz.Line, error) {
	acked, err := f.append(id, events)
	return acked, nil, err
}
func (f *fakeStore) Acked(string) (uint64, error)                       { return 41, nil }
func (f *fakeStore) Records(string, uint64, int) ([]quiz.Record, error) { return nil, nil }
func (f *fakeStore) Devices(string, int) ([]quiz.Device, error)         { return nil, nil }
func (f *fakeStore) Waiting(string, int) ([]quiz.Event, error)          { return nil, nil }
func (f *fakeStore) SetCheck(string, uint64, quiz.Check) error          { return nil }
func (f *fakeStore) Docs(quiz.DocKind, string, int) ([]quiz.Doc, error) { return nil, nil }
func (f *fakeStore) Doc(quiz.DocKind, string) (quiz.Doc, error)         { return quiz.Doc{}, quiz.ErrNoDoc }
func (f *fakeStore) Ready() error                                       { return f.ready() }
func (f *fakeStore) Close() error                                       { return nil }

var files = fstest.MapFS{
	"index.html":                 {Data: []byte("<!doctype html><title>Lintel</title>" + strings.Repeat(" ", 100))},
	"index.html.br":              {Data: []byte("packed page")},
	"sw.js":                      {Data: []byte("self.oninstall = () => {}")},
	"manifest.webmanifest":       {Data: []byte("{}")},
	"assets/engine-ab12.wasm":    {Data: bytes.Repeat([]byte{0, 'a', 's', 'm'}, 50)},
	"assets/engine-ab12.wasm.br": {Data: []byte("packed engine")},
	"assets/engine-ab12.wasm.gz": {Data: []byte("packed engine, less well")},
	"assets/app-cd34.js":         {Data: []byte("1")},
	"assets/app-cd34.js.br":      {Data: []byte("longer than the plain one")},
	"icons/icon.svg":             {Data: []byte("<svg/>")},
}

// app is the API over a fake store, with its log and clock.
type app struct {
	*fiber.App
	t     *testing.T
	store *fakeStore
	log   *bytes.Buffer
	now   time.Time
}

func (a *app) clock() time.Time { return a.now }

func newApp(t *testing.T) *app { return newAppWith(t, files) }

func newAppWith(t *testing.T, site fs.FS) *app {
	t.Helper()
	a := &app{t: t, log: &bytes.Buffer{}, now: time.Unix(1_790_000_000, 0)}
	a.store = &fakeStore{
		append: func(_ string, events []quiz.Event) (uint64, error) { return events[len(events)-1].Seq, nil },
		ready:  func() error { return nil },
	}
	classes, err := class.New(class.Config{Store: a.store, Desk: desk.New(a.store, a.clock, desk.DefaultCost), Now: a.clock, Log: slog.New(slog.DiscardHandler)})
	require.NoError(t, err)
	made, err := httpapi.New(httpapi.Config{
		Desk: desk.New(a.store, a.clock, desk.DefaultCost), Classes: classes, Addresses: func() []string { return nil },
		Store: a.store, Site: site, Engine: "0.1.0", Content: "c1",
		Free:  func() (uint64, bool) { return 0, false },
		Acked: func(string, uint64) {}, Socket: func(*websocket.Conn) {}, SignedOut: func(string) {},
		Now: a.clock,
		Log: slog.New(slog.NewJSONHandler(a.log, &slog.HandlerOptions{Level: slog.LevelDebug})),
	})
	require.NoError(t, err)
	a.App = made
	return a
}

// ask sends one request; headers come in pairs.
func (a *app) ask(method, path, body string, headers ...string) (*http.Response, string) {
	a.t.Helper()
	request := httptest.NewRequest(method, path, strings.NewReader(body))
	request.Host = "lintel.example"
	if method == "POST" {
		request.Header.Set("Content-Type", "application/json")
	}
	for i := 0; i+1 < len(headers); i += 2 {
		request.Header.Set(headers[i], headers[i+1])
	}
	reply, err := a.Test(request, 5000)
	require.NoError(a.t, err)
	defer reply.Body.Close()
	text, err := io.ReadAll(reply.Body)
	require.NoError(a.t, err)
	return reply, string(text)
}

var signedIn = []string{"Authorization", "Device " + device + ":" + secret}

// batch is a request body of n events.
func batch(t *testing.T, n int) string {
	t.Helper()
	var events []quiz.Event
	for seq := uint64(1); seq <= uint64(n); seq++ {
		events = append(events, quiz.Event{V: 1, ID: strings.Repeat("c", 32), Device: device, Seq: seq, Engine: "0.1.0", Kind: quiz.NoteEvent, Body: quiz.Raw(`{}`)})
	}
	text, err := json.Marshal(map[string]any{"v": 1, "events": events})
	require.NoError(t, err)
	return string(text)
}
