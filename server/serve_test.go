package main

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"net/http"
	"path/filepath"
	"regexp"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/content"
	"lintel/engine"
	"lintel/quiz"
)

// lines is what a command prints, read while it runs.
type lines struct {
	mu   sync.Mutex
	text bytes.Buffer
}

func (l *lines) Write(p []byte) (int, error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.text.Write(p)
}

func (l *lines) String() string {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.text.String()
}

// serving runs the serve command until the test ends and returns its address.
func startServe(t *testing.T, data string) string {
	t.Helper()
	ctx, stop := context.WithCancel(context.Background())
	var out, errOut lines
	code := make(chan int, 1)
	go func() { code <- runServe(ctx, []string{"-addr", "127.0.0.1:0", "-data", data}, &out, &errOut) }()
	t.Cleanup(func() {
		stop()
		assert.Zero(t, <-code, errOut.String())
	})
	address := regexp.MustCompile(`http://127\.0\.0\.1:\d+`)
	require.Eventually(t, func() bool { return address.MatchString(out.String()) }, 10*time.Second, 5*time.Millisecond, errOut.String())
	return address.FindString(out.String())
}

const (
	testDevice = "00000000000000000000000000000007"
	testSecret = "0000000000000000000000000000000000000000000000000000000000000009"
)

func call(t *testing.T, method, url string, body any) (int, string) {
	t.Helper()
	text, err := json.Marshal(body)
	require.NoError(t, err)
	request, err := http.NewRequest(method, url, bytes.NewReader(text))
	require.NoError(t, err)
	request.Header.Set("Content-Type", "application/json")
	request.Header.Set("Authorization", "Device "+testDevice+":"+testSecret)
	reply, err := http.DefaultClient.Do(request)
	require.NoError(t, err)
	defer reply.Body.Close()
	got, err := io.ReadAll(reply.Body)
	require.NoError(t, err)
	return reply.StatusCode, string(got)
}

// answered is an answer to a real item, with the verdict that the same engine
// gives on a phone.
func answered(t *testing.T, family string, seed uint64) quiz.AnswerBody {
	t.Helper()
	made, err := content.Item(family, seed)
	require.NoError(t, err)
	answer := quiz.Answer{V: 1, Engine: made.Engine, Content: made.Content, Family: made.Family, Seed: made.Seed, TookS: 9}
	for _, ask := range made.Question.Asks {
		answer.Replies = append(answer.Replies, quiz.Reply{Ask: ask.ID, Unsure: true})
	}
	verdict, err := content.Score(answer)
	require.NoError(t, err)
	return quiz.AnswerBody{Answer: answer, Verdict: verdict}
}

// The whole way with the real content: an honest answer is confirmed, one with
// a better score than it earned is not, and the keeper's commands agree.
func TestTheServerRecomputesRealAnswers(t *testing.T) {
	data := t.TempDir()
	url := startServe(t, data)
	status, text := call(t, "POST", url+"/api/v1/devices", map[string]any{"v": 1, "device": testDevice, "secret": testSecret, "call_sign": "Engine 7"})
	require.Equal(t, 201, status, text)

	honest := answered(t, content.Families()[0].ID, 7)
	boasting := honest
	boasting.Verdict.Score = 1
	require.Less(t, honest.Verdict.Score, 1.0, "cannot tell is never worth everything")
	var events []quiz.Event
	for i, body := range []quiz.AnswerBody{honest, boasting} {
		raw, err := json.Marshal(body)
		require.NoError(t, err)
		events = append(events, quiz.Event{V: 1, ID: fmt.Sprintf("%032x", i+1), Device: testDevice, Seq: uint64(i) + 1,
			Engine: engine.Version, TClient: 1_790_000_000_000, Kind: quiz.AnswerEvent, Body: raw})
	}
	status, text = call(t, "POST", url+"/api/v1/events", map[string]any{"v": 1, "events": events})
	require.Equal(t, 200, status, text)

	var page struct{ Records []quiz.Record }
	require.Eventually(t, func() bool {
		_, text := call(t, "GET", url+"/api/v1/records", nil)
		require.NoError(t, json.Unmarshal([]byte(text), &page))
		return len(page.Records) == 2 && page.Records[1].Check.State != quiz.CheckWaiting
	}, 30*time.Second, 20*time.Millisecond)
	assert.Equal(t, quiz.CheckAgreed, page.Records[0].Check.State, page.Records[0].Check.Why)
	assert.Equal(t, quiz.CheckDiffers, page.Records[1].Check.State)
	assert.InDelta(t, honest.Verdict.Score, page.Records[1].Check.Verdict.Score, 1e-12)

	var out, errOut lines
	require.Zero(t, runExport(context.Background(), []string{"-data", data}, &out, &errOut), errOut.String())
	assert.Contains(t, out.String(), "differs")
	copied := filepath.Join(t.TempDir(), "copy.db")
	require.Zero(t, runBackup(context.Background(), []string{"-data", data, copied}, &out, &errOut), errOut.String())
	assert.Contains(t, out.String(), "1 devices, 2 events, 2 answers, 2 of them checked")
	assert.Equal(t, 2, runRestore(context.Background(), []string{"-data", data, copied}, &out, &errOut))
	assert.Contains(t, errOut.String(), "is in use by another Lintel", "not while it serves")
}
