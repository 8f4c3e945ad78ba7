package main

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"net/http"
	"os"
	"path/filepath"
	"regexp"
	"strings"
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

// Whatever is wrong behind a command's name is said in one line that names the
// command, and nothing is made or printed.
func TestWrongWordsAreRefusedInOneLine(t *testing.T) {
	nowhere := filepath.Join(t.TempDir(), "none")
	cases := map[string]string{
		"bogus":                       `there is no command "bogus"`,
		"-bogus":                      "lintel serve: flag provided but not defined: -bogus",
		"serve one":                   `lintel serve: it takes no "one"`,
		"serve -data=":                "name a folder",
		"backup":                      "lintel backup: give the name of a new file",
		"backup one two":              "lintel backup: give the name of a new file",
		"restore -nonsense":           "lintel restore: flag provided",
		"restore nowhere.db":          "lintel restore: nowhere.db does not exist: name a file that the command backup wrote",
		"compact one":                 `lintel compact: it takes no "one"`,
		"export -jsonl=perhaps":       "lintel export: invalid boolean value",
		"check one":                   `lintel check: it takes no "one"`,
		"instructor":                  "lintel instructor: say list, or reset and a call sign",
		"instructor drop X":           "lintel instructor: say list, or reset and a call sign",
		"instructor list -bogus":      "lintel instructor: flag provided",
		"bench -only nothing":         `lintel bench: -only "nothing" names no figure: use one of vent_flow,`,
		"bench -minutes -3":           "lintel bench: give -minutes",
		"bench -minutes NaN":          "lintel bench: give -minutes",
		"bench -minutes 1 -only none": `lintel bench: -only "none" names no figure with a long run: use one of conservation,`,
		"validate one":                `lintel validate: it takes no "one"`,
		"sim":                         "lintel sim: give one scenario file",
		"help bogus":                  `there is no command "bogus"`,
	}
	t.Setenv("LINTEL_DATA", nowhere)
	for words, says := range cases {
		code, out, errOut := say(t, strings.Fields(words)...)
		assert.Equal(t, 2, code, words)
		assert.Empty(t, out, words)
		assert.Contains(t, errOut, says, words)
		assert.Equal(t, 1, strings.Count(errOut, "\n"), errOut)
	}
	assert.NoDirExists(t, nowhere)
}

// Help is no mistake, and flags may stand on either side of a word.
func TestHelpAndFlagsAnywhere(t *testing.T) {
	for _, c := range commands {
		for _, words := range [][]string{{c.name, "-h"}, {"help", c.name}} {
			code, out, errOut := say(t, words...)
			assert.Zero(t, code, words)
			assert.True(t, strings.HasPrefix(out, c.name+" "), out)
			assert.Empty(t, errOut, words)
		}
	}
	for _, words := range [][]string{{"help"}, {"-h"}, {"--help"}} {
		code, out, _ := say(t, words...)
		assert.Zero(t, code)
		assert.Contains(t, out, "put a backup in place")
	}
	for _, words := range [][]string{{"instructor", "list", "-data", t.TempDir()}, {"instructor", "-data", t.TempDir(), "list"}} {
		_, _, errOut := say(t, words...)
		assert.Contains(t, errOut, "lintel.db does not exist", words)
	}
}

// A file that is not ours is spoken of once, and by nothing that it is not.
func TestAForeignStoreIsRefusedInOneLine(t *testing.T) {
	data := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(data, "lintel.db"), []byte("somebody's notes"), 0o600))
	code, out, errOut := say(t, "serve", "-addr", "127.0.0.1:0", "-data", data)
	assert.Equal(t, 2, code)
	assert.Empty(t, out)
	assert.Contains(t, errOut, "is not a Lintel store")
	assert.Equal(t, 1, strings.Count(errOut, "\n"), errOut)
}

// say runs a command that ends by itself.
func say(t *testing.T, words ...string) (code int, out, errOut string) {
	t.Helper()
	ctx, stop := context.WithTimeout(context.Background(), 20*time.Second)
	defer stop()
	var o, e lines
	code = dispatch(ctx, words, streams{strings.NewReader(""), &o, &e})
	return code, o.String(), e.String()
}
