package verdict_test

import (
	"context"
	"encoding/json"
	"errors"
	"io"
	"log/slog"
	"strings"
	"sync"
	"testing"
	"testing/synctest"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/quiz"
	"lintel/server/verdict"
)

// right is the verdict that the score below gives to every answer of family f.
var right = quiz.Verdict{V: 1, Engine: "e1", Score: 0.6, Parts: []quiz.Part{{Ask: "volume", Truth: []quiz.Reply{}, Error: 0.25}, {Ask: "flow", Truth: []quiz.Reply{}, Right: true}}}

func score(a quiz.Answer) (quiz.Verdict, error) {
	switch a.Family {
	case "f":
		return right, nil
	case "falls":
		panic("as asked")
	}
	return quiz.Verdict{}, errors.New("family " + a.Family + " is not known")
}

func checker(s verdict.Store) *verdict.Checker {
	return verdict.New(s, "e1", "c1", score, slog.New(slog.NewTextHandler(io.Discard, nil)))
}

// event is an answer event with a body changed by the caller.
func event(t *testing.T, change func(*quiz.AnswerBody)) quiz.Event {
	t.Helper()
	body := quiz.AnswerBody{Answer: quiz.Answer{V: 1, Engine: "e1", Content: "c1", Family: "f", Seed: 3, Replies: []quiz.Reply{}}, Verdict: right}
	body.Verdict.Parts = append([]quiz.Part{}, right.Parts...)
	body.Verdict.Exact.Looks = nil
	change(&body)
	text, err := json.Marshal(body)
	require.NoError(t, err)
	return quiz.Event{Device: "d", Seq: 1, Kind: quiz.AnswerEvent, Body: []byte(strings.Replace(string(text), `"looks":null`, `"looks":[]`, 1))}
}

func TestCheck(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*quiz.AnswerBody)
		state  quiz.CheckState
		why    string
	}{
		{"honest", func(*quiz.AnswerBody) {}, quiz.CheckAgreed, ""},
		{"rounded", func(b *quiz.AnswerBody) { b.Verdict.Score += 1e-12 }, quiz.CheckAgreed, ""},
		{"a better score", func(b *quiz.AnswerBody) { b.Verdict.Score = 0.9 }, quiz.CheckDiffers, "a score of 0.900, recomputed it is 0.600"},
		{"a part turned right", func(b *quiz.AnswerBody) { b.Verdict.Parts[0].Right = true }, quiz.CheckDiffers, "another result for volume"},
		{"a smaller error", func(b *quiz.AnswerBody) { b.Verdict.Parts[0].Error = 0 }, quiz.CheckDiffers, "another result for volume"},
		{"a part left out", func(b *quiz.AnswerBody) { b.Verdict.Parts = b.Verdict.Parts[:1] }, quiz.CheckDiffers, "1 parts, recomputed there are 2"},
		{"another engine", func(b *quiz.AnswerBody) { b.Answer.Engine = "e0" }, quiz.CheckOnDevice, "scored on device, version e0"},
		{"other content", func(b *quiz.AnswerBody) { b.Answer.Content = "c0" }, quiz.CheckOnDevice, "with content c0"},
		{"no version", func(b *quiz.AnswerBody) { b.Answer.Engine = "" }, quiz.CheckUnreadable, "names no version"},
		{"an unknown family", func(b *quiz.AnswerBody) { b.Answer.Family = "g" }, quiz.CheckUnreadable, "family g is not known"},
		{"a family that breaks the scoring", func(b *quiz.AnswerBody) { b.Answer.Family = "falls" }, quiz.CheckUnreadable, "could not be worked out"},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := checker(nil).Check(event(t, c.change))
			assert.Equal(t, c.state, got.State, got.Why)
			assert.Contains(t, got.Why, c.why)
			assert.Equal(t, c.state == quiz.CheckAgreed || c.state == quiz.CheckDiffers, got.Verdict != nil)
		})
	}
}

func TestBodiesThatAreNoAnswer(t *testing.T) {
	for _, text := range []string{`{}`, `{"answer":3}`, `{"answer":{"engine":"e1","content":"c1","seed":-1}}`, `{"answer":{"engine":"e1","content":"c1"},"verdict":[]}`, `{"answer":{"engine":["e1"]}}`} {
		got := checker(nil).Check(quiz.Event{Kind: quiz.AnswerEvent, Body: []byte(text)})
		assert.Equal(t, quiz.CheckUnreadable, got.State, text)
		assert.NotEmpty(t, got.Why)
	}
}

// queue is a store of waiting answers in memory that fails at first if told to.
type queue struct {
	mu       sync.Mutex
	waiting  []quiz.Event
	checked  []quiz.Check
	failures int
	after    string // whose turn the checker says was the last
}

func (q *queue) Waiting(after string, limit int) ([]quiz.Event, error) {
	q.mu.Lock()
	defer q.mu.Unlock()
	q.after = after
	return append([]quiz.Event{}, q.waiting[:min(limit, len(q.waiting))]...), nil
}

func (q *queue) SetCheck(_ string, _ uint64, check quiz.Check) error {
	q.mu.Lock()
	defer q.mu.Unlock()
	if q.failures > 0 {
		q.failures--
		return quiz.ErrFull
	}
	q.waiting = q.waiting[1:]
	q.checked = append(q.checked, check)
	return nil
}

func (q *queue) counts() (waiting, checked int) {
	q.mu.Lock()
	defer q.mu.Unlock()
	return len(q.waiting), len(q.checked)
}

func TestRunChecksWhatWaitsAndWhatComesLater(t *testing.T) {
	q := &queue{failures: 1}
	for range 150 {
		q.waiting = append(q.waiting, event(t, func(*quiz.AnswerBody) {}))
	}
	c := checker(q)
	ctx, stop := context.WithCancel(context.Background())
	done := make(chan struct{})
	go func() { c.Run(ctx); close(done) }()

	// The first check could not be stored; the next batch that comes in sets it
	// going again.
	require.Eventually(t, func() bool { q.mu.Lock(); defer q.mu.Unlock(); return q.failures == 0 }, 5*time.Second, time.Millisecond)
	c.Wake()
	require.Eventually(t, func() bool { waiting, checked := q.counts(); return waiting == 0 && checked == 150 }, 5*time.Second, time.Millisecond)

	q.mu.Lock()
	last := event(t, func(*quiz.AnswerBody) {})
	last.Device = "the last"
	q.waiting = append(q.waiting, last)
	q.mu.Unlock()
	c.Wake()
	c.Wake()
	require.Eventually(t, func() bool { _, checked := q.counts(); return checked == 151 }, 5*time.Second, time.Millisecond)
	require.Eventually(t, func() bool { q.mu.Lock(); defer q.mu.Unlock(); return q.after == "the last" }, 5*time.Second, time.Millisecond, "the next turn is another device's")
	stop()
	<-done
}

// Scenes that take long to work out have a quarter of a core, however many wait; a
// stop is not kept waiting by the rest between them.
func TestDearScenesLeaveTheCoreToOthers(t *testing.T) {
	for took, want := range map[time.Duration]time.Duration{2 * time.Second: 4 * (2 + 6) * time.Second, 100 * time.Millisecond: 4 * 100 * time.Millisecond} {
		synctest.Test(t, func(t *testing.T) {
			q := &queue{}
			for range 5 {
				q.waiting = append(q.waiting, event(t, func(*quiz.AnswerBody) {}))
			}
			c := checker(q)
			c.Score = func(quiz.Answer) (quiz.Verdict, error) { time.Sleep(took); return right, nil }
			began := time.Now()
			ctx, stop := context.WithCancel(t.Context())
			done := make(chan struct{})
			go func() { c.Run(ctx); close(done) }()
			time.Sleep(want + took - time.Millisecond)
			_, checked := q.counts()
			assert.Equal(t, 4, checked, took)
			time.Sleep(2 * time.Millisecond)
			_, checked = q.counts()
			assert.Equal(t, 5, checked, took)
			stop()
			<-done
			assert.Less(t, time.Since(began), want+took+time.Second)
		})
	}
}
