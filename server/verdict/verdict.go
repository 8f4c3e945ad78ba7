// Package verdict looks at every answer a second time: when the device ran the
// same engine and content as this server, the score is recomputed from the
// family, the seed and the replies, and the server's verdict is stored beside
// the event. A device cannot invent a score. An answer scored by another
// version is kept as it is and marked so; it is never rescored.
//
// Answers wait in the store, not in memory: what a crash interrupts is taken up
// again at the next start.
package verdict

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"log/slog"
	"time"

	"lintel/engine/shape"
	"lintel/quiz"
)

// Store is what a Checker asks of the store.
type Store interface {
	Waiting(after string, limit int) ([]quiz.Event, error)
	SetCheck(device string, seq uint64, check quiz.Check) error
}

// Checker checks waiting answers one after another: scoring simulates a fire,
// and one core is the most that devices can make a server spend on it. Devices take
// turns, an answer each, so that one which sends thousands keeps no other waiting.
type Checker struct {
	Store   Store
	Engine  string
	Content string
	Score   func(quiz.Answer) (quiz.Verdict, error)
	Log     *slog.Logger

	wake chan struct{}
	last string // device whose turn was the last
}

// New returns a checker that scores by one version of engine and content.
func New(store Store, engine, content string, score func(quiz.Answer) (quiz.Verdict, error), log *slog.Logger) *Checker {
	return &Checker{Store: store, Engine: engine, Content: content, Score: score, Log: log, wake: make(chan struct{}, 1)}
}

// Wake says that answers have come in. It never waits.
func (c *Checker) Wake() {
	select {
	case c.wake <- struct{}{}:
	default:
	}
}

// Chosen by us: how many answers are fetched at a time, and how long to wait
// after the store refused a check (its disk is full, say). After an answer that took
// longer than dear to work out, no other is for resting times as long: a scene that
// anybody sketched may take ten seconds, and would keep a core from the classes for as
// long as its sender likes. The families' own take far less.
const (
	portion = 64
	pause   = 30 * time.Second
	dear    = time.Second
	resting = 3
)

// Run checks until ctx ends.
func (c *Checker) Run(ctx context.Context) {
	for {
		err := c.drain(ctx)
		var retry <-chan time.Time
		if err != nil && ctx.Err() == nil {
			c.Log.Error("answers not checked", "err", err)
			retry = time.After(pause)
		}
		select {
		case <-ctx.Done():
			return
		case <-c.wake:
		case <-retry:
		}
	}
}

// drain checks everything that waits.
func (c *Checker) drain(ctx context.Context) error {
	for {
		events, err := c.Store.Waiting(c.last, portion)
		if err != nil || len(events) == 0 {
			return err
		}
		for _, e := range events {
			if ctx.Err() != nil {
				return ctx.Err()
			}
			began := time.Now()
			check := c.Check(e)
			took := time.Since(began)
			if check.State == quiz.CheckDiffers {
				c.Log.Warn("verdict differs", "device", e.Device, "seq", e.Seq, "why", check.Why)
			}
			if err := c.Store.SetCheck(e.Device, e.Seq, check); err != nil {
				return err
			}
			c.last = e.Device
			rest(ctx, took)
		}
	}
}

// rest waits after an answer that was dear, or until ctx ends.
func rest(ctx context.Context, took time.Duration) {
	if took <= dear {
		return
	}
	select {
	case <-ctx.Done():
	case <-time.After(resting * took):
	}
}

// Check is the server's look at one answer event.
func (c *Checker) Check(e quiz.Event) quiz.Check {
	// The version is read first and leniently: a body of another version may
	// hold fields that this server has never heard of.
	var by struct {
		Answer struct{ Engine, Content string } `json:"answer"`
	}
	if err := json.Unmarshal(e.Body, &by); err != nil || by.Answer.Engine == "" {
		return unreadable("the body names no version")
	}
	if by.Answer.Engine != c.Engine || by.Answer.Content != c.Content {
		return quiz.Check{V: 1, State: quiz.CheckOnDevice, Engine: by.Answer.Engine, Content: by.Answer.Content,
			Why: "scored on device, version " + by.Answer.Engine + " with content " + by.Answer.Content}
	}
	body, err := readBody(e.Body)
	if err != nil {
		return unreadable(err.Error())
	}
	own, err := c.score(body.Answer)
	if err != nil {
		return unreadable(err.Error())
	}
	check := quiz.Check{V: 1, State: quiz.CheckAgreed, Engine: c.Engine, Content: c.Content, Verdict: &own}
	if why := difference(own, body.Verdict); why != "" {
		check.State, check.Why = quiz.CheckDiffers, why
	}
	return check
}

// score keeps a fault in one answer from ending the checking of all others.
func (c *Checker) score(answer quiz.Answer) (verdict quiz.Verdict, err error) {
	defer func() {
		if fault := recover(); fault != nil {
			c.Log.Error("scoring panicked", "family", answer.Family, "seed", answer.Seed, "fault", fault)
			err = errors.New("the score could not be worked out")
		}
	}()
	return c.Score(answer)
}

func readBody(text quiz.Raw) (quiz.AnswerBody, error) {
	var body quiz.AnswerBody
	var tree any
	if err := json.Unmarshal(text, &tree); err != nil {
		return body, err
	}
	return body, shape.Decode(tree, &body)
}

func unreadable(why string) quiz.Check {
	return quiz.Check{V: 1, State: quiz.CheckUnreadable, Why: why}
}

// sameScore is how near two scores must be. Both come from the same pure Go
// arithmetic, so the slack is only for a device that rounds what it sends
// (chosen by us).
const sameScore = 1e-9

// difference says in what the device's verdict departs from the server's.
func difference(own, claimed quiz.Verdict) string {
	if !near(own.Score, claimed.Score) {
		return fmt.Sprintf("the device showed a score of %.3f, recomputed it is %.3f", claimed.Score, own.Score)
	}
	if len(own.Parts) != len(claimed.Parts) {
		return fmt.Sprintf("the device showed %d parts, recomputed there are %d", len(claimed.Parts), len(own.Parts))
	}
	for i := range own.Parts {
		if own.Parts[i].Ask != claimed.Parts[i].Ask || own.Parts[i].Right != claimed.Parts[i].Right || !near(own.Parts[i].Error, claimed.Parts[i].Error) {
			return "the device showed another result for " + own.Parts[i].Ask
		}
	}
	return ""
}

func near(a, b float64) bool { return a-b < sameScore && b-a < sameScore }
