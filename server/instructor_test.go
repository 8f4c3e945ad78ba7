package main

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"net/http"
	"net/http/cookiejar"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/content"
	"lintel/content/wording"
	"lintel/engine"
	"lintel/quiz"
	"lintel/quiz/session"
)

// served runs the serve command and returns its address, what it printed, and how
// to stop it.
func served(t *testing.T, data string) (url, said string, stop func()) {
	t.Helper()
	ctx, cancel := context.WithCancel(context.Background())
	var out, errOut lines
	code := make(chan int, 1)
	go func() { code <- runServe(ctx, []string{"-addr", "127.0.0.1:0", "-data", data}, &out, &errOut) }()
	require.Eventually(t, func() bool { return strings.Contains(out.String(), "Training only") }, 10*time.Second, 5*time.Millisecond, errOut.String())
	return regexp.MustCompile(`http://127\.0\.0\.1:\d+`).FindString(out.String()), out.String(), func() {
		cancel()
		assert.Zero(t, <-code, errOut.String())
	}
}

var spacedCode = regexp.MustCompile(`[0-9A-Z]{4}(-[0-9A-Z]{4}){3}`)

func ask(t *testing.T, browser *http.Client, method, url string, body, into any) int {
	t.Helper()
	text, err := json.Marshal(body)
	require.NoError(t, err)
	request, err := http.NewRequest(method, url, bytes.NewReader(text))
	require.NoError(t, err)
	request.Header.Set("Content-Type", "application/json")
	reply, err := browser.Do(request)
	require.NoError(t, err)
	defer reply.Body.Close()
	if into != nil {
		require.NoError(t, json.NewDecoder(reply.Body).Decode(into))
	}
	return reply.StatusCode
}

func newBrowser(t *testing.T) *http.Client {
	t.Helper()
	jar, err := cookiejar.New(nil)
	require.NoError(t, err)
	return &http.Client{Jar: jar}
}

// The first chief comes in by the code that serve prints; one who forgot the pass
// phrase by a code from the console, while the server runs and while it does not.
func TestTheConsoleLetsInstructorsIn(t *testing.T) {
	data := t.TempDir()
	url, said, stop := served(t, data)
	setUp := spacedCode.FindString(said)
	require.NotEmpty(t, setUp, said)
	browser := newBrowser(t)
	require.Equal(t, 201, ask(t, browser, "POST", url+"/api/v1/setup", map[string]any{"v": 1, "code": setUp, "call_sign": "Chief 1", "pass_phrase": "four words of my own"}, nil))

	reset := func() string {
		var out, errOut lines
		require.Zero(t, runInstructor(context.Background(), []string{"-data", data, "reset", "Chief 1"}, &out, &errOut), errOut.String())
		return spacedCode.FindString(out.String())
	}
	choose := func(url, code, phrase string) int {
		return ask(t, browser, "POST", url+"/api/v1/reset", map[string]any{"v": 1, "code": code, "pass_phrase": phrase}, nil)
	}
	assert.Equal(t, 200, choose(url, reset(), "another phrase of mine"))
	var out, errOut lines
	require.Zero(t, runInstructor(context.Background(), []string{"-data", data, "list"}, &out, &errOut))
	assert.Equal(t, "Chief 1 (chief)\n", out.String())
	assert.Equal(t, 2, runInstructor(context.Background(), []string{"-data", data, "reset", "Nobody"}, &out, &errOut))
	assert.Contains(t, errOut.String(), "Nobody is no instructor here: see the call signs")
	stop()

	code := reset()
	url, said, stop = served(t, data)
	defer stop()
	assert.NotContains(t, said, "Set-up code", "it is set up")
	assert.Equal(t, 200, choose(url, code, "a third phrase of mine"))
	assert.Equal(t, 403, choose(url, code, "a fourth phrase of mine"), "once")
	for _, args := range [][]string{{}, {"list", "x"}, {"reset"}, {"dance"}} {
		assert.Equal(t, 2, runInstructor(context.Background(), append([]string{"-data", data}, args...), &out, &errOut), "%v", args)
	}
}

// A class of one scene of every kind of item, answered by the real content: what
// counts in the class is what the record's own check finds.
func TestAClassCountsAsTheRecordDoes(t *testing.T) {
	url, said, stop := served(t, t.TempDir())
	defer stop()
	browser := newBrowser(t)
	require.Equal(t, 201, ask(t, browser, "POST", url+"/api/v1/setup", map[string]any{"v": 1, "code": spacedCode.FindString(said), "call_sign": "Chief 1", "pass_phrase": "four words of my own"}, nil))
	var planned []session.Planned
	seen := map[quiz.ItemKind]bool{}
	for _, f := range content.Families() {
		if !seen[f.Kind] {
			seen[f.Kind] = true
			planned = append(planned, session.Planned{Family: f.ID, Seed: 3})
		}
	}
	require.Len(t, planned, len(quiz.ItemKinds))
	var opened struct{ Class session.Listed }
	require.Equal(t, 201, ask(t, browser, "POST", url+"/api/v1/classes", map[string]any{"v": 1, "title": "Every kind", "pace": "self", "scenes": planned}, &opened))
	status, text := call(t, "POST", url+"/api/v1/join", map[string]any{"v": 1, "token": opened.Class.Door.Token, "call_signs": map[string]string{"a": "Engine 7"}})
	require.Equal(t, 200, status, text)

	var events []quiz.Event
	scores := map[string]float64{}
	for i, p := range planned {
		body := answered(t, p.Family, p.Seed)
		scene := fmt.Sprintf("s%d", i+1)
		scores[scene] = body.Verdict.Score
		body.Class = &quiz.ClassRef{ID: opened.Class.ID, Scene: scene, Place: "a"}
		raw, err := json.Marshal(body)
		require.NoError(t, err)
		events = append(events, quiz.Event{V: 1, ID: fmt.Sprintf("%032x", i+1), Device: testDevice, Seq: uint64(i) + 1, Engine: engine.Version, TClient: 1, Kind: quiz.AnswerEvent, Body: raw})
	}
	status, text = call(t, "POST", url+"/api/v1/events", map[string]any{"v": 1, "events": events})
	require.Equal(t, 200, status, text)
	var report struct{ Report session.Report }
	require.Equal(t, 200, ask(t, browser, "GET", url+"/api/v1/classes/"+opened.Class.ID+"/report", nil, &report))
	answers := report.Report.People[0].Answers
	require.Len(t, answers, len(planned))
	for _, a := range answers {
		sum := 0.0
		for _, p := range a.Parts {
			sum += 1 - p.Error
		}
		assert.InDelta(t, scores[a.Scene], sum/float64(len(a.Parts)), 1e-9, a.Scene)
	}
	for _, scene := range report.Report.Scenes {
		assert.NotEqual(t, scene.Title, wording.Say(scene.Title), "the content has words for it")
	}
}
