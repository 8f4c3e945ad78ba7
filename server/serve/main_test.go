package serve_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"log/slog"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"sync/atomic"
	"testing"
	"testing/fstest"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/engine"
	"lintel/quiz"
	"lintel/quiz/session"
	"lintel/server/desk"
	"lintel/server/serve"
	"lintel/server/store"
	"lintel/server/store/storetest"
)

// TestMain lets the test binary be the server that a test kills.
func TestMain(m *testing.M) {
	if data := os.Getenv("LINTEL_TEST_VICTIM"); data != "" {
		beVictim(data)
		return
	}
	os.Exit(m.Run())
}

// score stands in for content's: the seed decides, so that a test can know.
func score(a quiz.Answer) (quiz.Verdict, error) {
	if a.Family == "" {
		return quiz.Verdict{}, errors.New("the answer names no family")
	}
	return quiz.Verdict{V: 1, Engine: a.Engine, Score: float64(a.Seed%100) / 100, Parts: []quiz.Part{}}, nil
}

// item stands in for content's: it asks for the volume at a door, which is 3, and
// for the neutral plane, which sits at 0.4.
func item(scene quiz.Scene) (quiz.Item, [][]quiz.Reply, error) {
	family := scene.Family
	if family != "f" && family != "g" {
		return quiz.Item{}, nil, engine.Bad("family", "is not one of ours", "use f or g")
	}
	volume, plane := 3, 0.4
	made := quiz.Item{V: 1, Engine: "0.1.0", Content: "c1", Family: family, Seed: scene.Seed, Kind: quiz.FlowPlane, Title: "family/" + family + "/title", Show: []string{"door"},
		Question: quiz.Question{Asks: []quiz.Ask{
			{ID: "level:volume@door", Kind: quiz.AskLevel, Cue: engine.CueVolume, Opening: "door", Text: "ask/level/volume"},
			{ID: "plane@door", Kind: quiz.AskPlane, Opening: "door", Text: "ask/plane"},
		}}}
	return made, [][]quiz.Reply{{{Level: &volume}}, {{Plane: &plane}}}, nil
}

func config(data string) serve.Config {
	return serve.Config{
		Addr: "127.0.0.1:0", Data: data,
		Site:   fstest.MapFS{"index.html": {Data: []byte("<!doctype html><title>Lintel</title>")}},
		Engine: "0.1.0", Content: "c1", Score: score, Item: item, PhraseCost: desk.Cost{KiB: 64, Passes: 1}, Says: func(string) func(string) string { return func(key string) string { return "said: " + key } },
		Choices: []session.Choice{{Family: "f", Title: "family/f/title", Cues: []string{"volume"}}, {Family: "g", Title: "family/g/title", Cues: []string{"volume"}}},
		Log:     slog.New(slog.NewTextHandler(io.Discard, nil)), Now: time.Now,
	}
}

// server is a real server on a free port, closed and walked through at the end.
type server struct {
	*serve.Main
	t     *testing.T
	url   string
	data  string
	ahead *atomic.Int64 // how far its clock has been put forward
}

type configuration = serve.Config

func start(t *testing.T) *server { return startIn(t, t.TempDir()) }

func startIn(t *testing.T, data string) *server {
	return startWith(t, data, func(*configuration) {})
}

func startWith(t *testing.T, data string, change func(*configuration)) *server {
	t.Helper()
	c := config(data)
	ahead := &atomic.Int64{}
	c.Now = func() time.Time { return time.Now().Add(time.Duration(ahead.Load())) }
	change(&c)
	m, err := serve.Run(c)
	require.NoError(t, err)
	t.Cleanup(func() {
		assert.NoError(t, m.Close())
		_, err := store.CheckFile(filepath.Join(data, store.FileName))
		assert.NoError(t, err)
	})
	return &server{Main: m, t: t, url: "http://" + m.Addr().String(), data: data, ahead: ahead}
}

// wait puts the server's clock forward.
func (s *server) wait(d time.Duration) { s.ahead.Add(int64(d)) }

// desk is the server's own desk, as the keeper's door has it.
func (s *server) desk() *desk.Desk { return s.Desk() }

// reply is what came back.
type reply struct {
	status int
	header http.Header
	text   string
}

// sentence is the error of a reply as one line.
func (r reply) sentence(t *testing.T) string {
	t.Helper()
	var body struct {
		Error *struct{ Where, What, Do string }
	}
	require.NoError(t, json.Unmarshal([]byte(r.text), &body), r.text)
	require.NotNil(t, body.Error, r.text)
	return strings.TrimSpace(body.Error.Where + " " + body.Error.What + ": " + body.Error.Do)
}

func (s *server) do(method, path string, body io.Reader, headers ...string) reply {
	s.t.Helper()
	request, err := http.NewRequest(method, s.url+path, body)
	require.NoError(s.t, err)
	if body != nil {
		request.Header.Set("Content-Type", "application/json")
	}
	for i := 0; i+1 < len(headers); i += 2 {
		request.Header.Set(headers[i], headers[i+1])
		if headers[i] == "Host" {
			request.Host = headers[i+1]
		}
	}
	got, err := http.DefaultClient.Do(request)
	require.NoError(s.t, err)
	defer got.Body.Close()
	text, err := io.ReadAll(got.Body)
	require.NoError(s.t, err)
	return reply{got.StatusCode, got.Header, string(text)}
}

func (s *server) post(path string, body any, headers ...string) reply {
	s.t.Helper()
	text, err := json.Marshal(body)
	require.NoError(s.t, err)
	return s.do("POST", path, bytes.NewReader(text), headers...)
}

// register makes device n known.
func (s *server) register(n int) {
	s.t.Helper()
	got := s.post("/api/v1/devices", map[string]any{"v": 1, "device": storetest.ID(n), "secret": storetest.Secret(n), "call_sign": "Engine 1"})
	require.Equal(s.t, 201, got.status, got.text)
}

// as is the header by which device n signs in.
func as(n int) []string {
	return []string{"Authorization", "Device " + storetest.ID(n) + ":" + storetest.Secret(n)}
}

// send posts events as device n.
func (s *server) send(n int, events []quiz.Event) reply {
	s.t.Helper()
	return s.post("/api/v1/events", map[string]any{"v": 1, "events": events}, as(n)...)
}
