package serve_test

import (
	"bytes"
	"encoding/json"
	"log/slog"
	"net"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/quiz"
	"lintel/server/store/storetest"
)

func TestEventsComeBackAsRecords(t *testing.T) {
	s := start(t)
	s.register(1)
	got := s.send(1, storetest.Answers(1, 1, 3))
	require.Equal(t, 200, got.status, got.text)
	assert.JSONEq(t, `{"v":1,"acked":3}`, got.text)

	got = s.do("GET", "/api/v1/state", nil, as(1)...)
	assert.JSONEq(t, `{"v":1,"acked":3,"engine":"0.1.0","content":"c1","validated":false}`, got.text)

	got = s.do("GET", "/api/v1/records?after=1&limit=1", nil, as(1)...)
	require.Equal(t, 200, got.status, got.text)
	var page struct {
		Records []quiz.Record
		Next    uint64
	}
	require.NoError(t, json.Unmarshal([]byte(got.text), &page))
	require.Len(t, page.Records, 1)
	assert.Equal(t, storetest.Answer(1, 2), page.Records[0].Event)
	assert.EqualValues(t, 2, page.Next)
}

func TestDuplicatesAndGaps(t *testing.T) {
	s := start(t)
	s.register(1)
	require.Equal(t, 200, s.send(1, storetest.Answers(1, 1, 3)).status)
	assert.JSONEq(t, `{"v":1,"acked":5}`, s.send(1, storetest.Answers(1, 2, 5)).text)

	got := s.send(1, storetest.Answers(1, 7, 8))
	assert.Equal(t, 409, got.status)
	assert.Contains(t, got.text, `"acked":5`)
	assert.Contains(t, got.sentence(t), "events are missing in the sequence")

	torn := append(storetest.Answers(1, 6, 6), storetest.Answers(1, 9, 9)...)
	got = s.send(1, torn)
	assert.Equal(t, 409, got.status)
	assert.Contains(t, got.text, `"acked":5`)

	forked := storetest.Answers(1, 5, 5)
	forked[0].ID = storetest.ID(99)
	got = s.send(1, forked)
	assert.Equal(t, 409, got.status)
	assert.NotContains(t, got.text, "acked", "a fork has no number to go on from")
	assert.Contains(t, got.sentence(t), "two histories")
}

func TestTruncatedBatchStoresNothing(t *testing.T) {
	s := start(t)
	s.register(1)
	whole, err := json.Marshal(map[string]any{"v": 1, "events": storetest.Answers(1, 1, 5)})
	require.NoError(t, err)
	for _, cut := range []int{0, 1, len(whole) / 3, len(whole) / 2, len(whole) - 1} {
		got := s.do("POST", "/api/v1/events", bytes.NewReader(whole[:cut]), as(1)...)
		assert.Equal(t, 400, got.status, "cut at %d", cut)
		assert.NotEmpty(t, got.sentence(t))
	}
	assert.Contains(t, s.do("GET", "/api/v1/state", nil, as(1)...).text, `"acked":0`)
	assert.Equal(t, "body is cut short: nothing was stored, send the whole body again",
		s.do("POST", "/api/v1/events", bytes.NewReader(whole[:99]), as(1)...).sentence(t))
}

func TestSecretsAreChecked(t *testing.T) {
	s := start(t)
	s.register(1)
	wrong := []string{"Authorization", "Device " + storetest.ID(1) + ":" + storetest.Secret(2)}
	stranger := []string{"Authorization", "Device " + storetest.ID(5) + ":" + storetest.Secret(5)}
	for _, path := range []string{"/api/v1/state", "/api/v1/records"} {
		first, second := s.do("GET", path, nil, wrong...), s.do("GET", path, nil, stranger...)
		assert.Equal(t, 401, first.status)
		assert.Equal(t, first.text, second.text, "nobody learns which devices exist")
		assert.Equal(t, 401, s.do("GET", path, nil).status)
		assert.Equal(t, 401, s.do("GET", path, nil, "Authorization", "Basic abc").status)
	}
	got := s.post("/api/v1/devices", map[string]any{"v": 1, "device": storetest.ID(1), "secret": storetest.Secret(2), "call_sign": "Thief"})
	assert.Equal(t, 401, got.status)

	s.register(2)
	got = s.send(2, storetest.Answers(1, 1, 1))
	assert.Equal(t, 400, got.status, "one device may not write another's history")
	assert.Contains(t, got.sentence(t), "not the device that signed in")
}

func TestHugeBodyGetsOneSentence(t *testing.T) {
	s := start(t)
	s.register(1)
	huge := bytes.Repeat([]byte("x"), 100<<20)
	start := time.Now()
	got := s.do("POST", "/api/v1/events", bytes.NewReader(huge), as(1)...)
	assert.Equal(t, 413, got.status)
	assert.Equal(t, "body is larger than this server takes: send less at a time; nothing was stored", got.sentence(t))
	assert.NotEmpty(t, got.header.Get("Content-Security-Policy"))
	assert.Less(t, time.Since(start), 10*time.Second)

	// The same without a declared length.
	got = s.do("POST", "/api/v1/events", struct{ *strings.Reader }{strings.NewReader(string(huge[:8<<20]))}, as(1)...)
	assert.Equal(t, 413, got.status)
}

func TestAnswersAreRecomputed(t *testing.T) {
	s := start(t)
	s.register(1)
	bodies := []string{
		`{"answer":{"v":1,"engine":"0.1.0","content":"c1","family":"f","seed":42,"replies":[],"took_s":3},"verdict":` + verdictText(0.42) + `}`,
		`{"answer":{"v":1,"engine":"0.1.0","content":"c1","family":"f","seed":42,"replies":[],"took_s":3},"verdict":` + verdictText(1) + `}`,
		`{"answer":{"v":1,"engine":"0.0.9","content":"c1","family":"f","seed":42,"replies":[],"took_s":3,"new":true},"verdict":` + verdictText(1) + `}`,
		`{"answer":{"v":1,"engine":"0.1.0","content":"c1","family":"","seed":42,"replies":[],"took_s":3},"verdict":` + verdictText(1) + `}`,
		`{"something":"else"}`,
	}
	events := storetest.Answers(1, 1, uint64(len(bodies)))
	for i := range events {
		events[i].Body = quiz.Raw(bodies[i])
	}
	got := s.send(1, events)
	require.Equal(t, 200, got.status, got.text)

	want := []quiz.CheckState{quiz.CheckAgreed, quiz.CheckDiffers, quiz.CheckOnDevice, quiz.CheckUnreadable, quiz.CheckUnreadable}
	var records []quiz.Record
	require.Eventually(t, func() bool {
		var page struct{ Records []quiz.Record }
		require.NoError(t, json.Unmarshal([]byte(s.do("GET", "/api/v1/records", nil, as(1)...).text), &page))
		records = page.Records
		return len(records) == len(want) && records[len(want)-1].Check.State != quiz.CheckWaiting
	}, 5*time.Second, 10*time.Millisecond)
	for i, r := range records {
		assert.Equal(t, want[i], r.Check.State, "answer %d: %s", i, r.Check.Why)
		assert.JSONEq(t, bodies[i], string(r.Body), "the event itself is kept as it came")
	}
	assert.InDelta(t, 0.42, records[1].Check.Verdict.Score, 1e-12, "the server's score stands beside the claimed one")
	assert.Equal(t, "scored on device, version 0.0.9 with content c1", records[2].Check.Why)
	assert.Nil(t, records[2].Check.Verdict, "another version is never rescored")
}

func verdictText(score float64) string {
	text, err := json.Marshal(quiz.Verdict{V: 1, Engine: "0.1.0", Score: score, Parts: []quiz.Part{}})
	if err != nil {
		panic(err)
	}
	// Go writes a nil list as null, which the strict reader takes as absent.
	return strings.Replace(string(text), `"looks":null`, `"looks":[]`, 1)
}

func TestMalformedRequests(t *testing.T) {
	s := start(t)
	s.register(1)
	event := storetest.Answer(1, 1)
	change := func(with func(*quiz.Event)) []quiz.Event {
		e := event
		with(&e)
		return []quiz.Event{e}
	}
	for _, c := range []struct {
		name   string
		events []quiz.Event
		says   string
	}{
		{"no events", nil, "events is empty"},
		{"version", change(func(e *quiz.Event) { e.V = 2 }), "events[0].v is 2"},
		{"id", change(func(e *quiz.Event) { e.ID = "ABC" }), "events[0].id is not 128 bits"},
		{"sequence", change(func(e *quiz.Event) { e.Seq = 0 }), "events[0].seq is 0"},
		{"engine", change(func(e *quiz.Event) { e.Engine = "" }), "events[0].engine"},
		{"clock", change(func(e *quiz.Event) { e.TClient = -1 }), "events[0].t_client"},
		{"kind", change(func(e *quiz.Event) { e.Kind = "gossip" }), "answer, size_up or note"},
		{"body", change(func(e *quiz.Event) { e.Body = quiz.Raw(`[1]`) }), "events[0].body is not an object"},
		{"too many", make([]quiz.Event, quiz.MaxBatch+1), "at most 100"},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := s.send(1, c.events)
			assert.Equal(t, 400, got.status, got.text)
			assert.Contains(t, got.sentence(t), c.says)
		})
	}
	for text, status := range map[string]int{
		`{"v":1,"events":[],"extra":1}`: 400, `{"v":1,"events":[],"events":[]}`: 400, `{"v":2,"events":[]}`: 400, `[]`: 400, `{"v":1,"events":[]}{}`: 400, `{"v":NaN}`: 400, "\x00\xff": 400,
	} {
		got := s.do("POST", "/api/v1/events", strings.NewReader(text), as(1)...)
		assert.Equal(t, status, got.status, text)
		assert.NotEmpty(t, got.sentence(t))
	}
	packed := append(as(1), "Content-Encoding", "gzip")
	assert.Equal(t, 415, s.do("POST", "/api/v1/events", strings.NewReader("x"), packed...).status)
	assert.Equal(t, 415, s.do("POST", "/api/v1/events", strings.NewReader("x"), append(as(1), "Content-Type", "text/plain")...).status)
	assert.Contains(t, s.do("GET", "/api/v1/state", nil, as(1)...).text, `"acked":0`)
}

// A request that breaks off is a line of the log without what it held: a secret may
// be among it. A connection that says nothing is no line, or strangers could fill
// the log.
func TestWhatBreaksOffIsNotWrittenDown(t *testing.T) {
	log := &book{}
	s := startWith(t, t.TempDir(), func(c *configuration) { c.Log = slog.New(slog.NewTextHandler(log, nil)) })
	for _, words := range []string{"", "GET /api/v1/state HTTP/1.1\r\nAuthorization: " + as(1)[1] + "\r\nCookie: lintel=secret\r\n"} {
		torn, err := net.Dial("tcp", s.Addr().String())
		require.NoError(t, err)
		_, err = torn.Write([]byte(words))
		require.NoError(t, err)
		require.NoError(t, torn.Close())
	}
	require.Eventually(t, func() bool { return strings.Contains(log.String(), "refused unread") }, 5*time.Second, 5*time.Millisecond)
	require.Equal(t, 200, s.do("GET", "/healthz", nil).status)
	assert.Equal(t, 1, strings.Count(log.String(), "\n"), log)
	assert.NotContains(t, log.String(), storetest.Secret(1))
	assert.NotContains(t, log.String(), "lintel=secret")
}

// book is a log that is read while it is written.
type book struct {
	mu   sync.Mutex
	text bytes.Buffer
}

func (b *book) Write(p []byte) (int, error) {
	b.mu.Lock()
	defer b.mu.Unlock()
	return b.text.Write(p)
}

func (b *book) String() string {
	b.mu.Lock()
	defer b.mu.Unlock()
	return b.text.String()
}
