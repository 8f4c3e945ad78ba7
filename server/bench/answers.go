package bench

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"sync"
	"time"

	"lintel/content"
	"lintel/engine"
	"lintel/engine/shape"
	"lintel/quiz"
	"lintel/server/bench/crowd"
)

const (
	answerPhones = 1000
	answerWithin = time.Second
	answerGoalMS = 250.0
)

// answersDurable is a whole class committing within one second. Control: the
// same bodies into bbolt's own Batch, tuned, behind net/http.
var answersDurable = Figure{
	Name: "answers_durable", Unit: "ms", Goal: "99th percentile 250, none lost", Slow: true,
	Measure: func(ctx context.Context) (r Result, err error) {
		h, err := openHall(ctx, answerPhones)
		if err != nil {
			return Result{}, err
		}
		defer func() { err = errors.Join(err, h.close()) }()
		b, err := startBareHub(ctx)
		if err != nil {
			return Result{}, err
		}
		defer func() { err = errors.Join(err, b.close()) }()
		if err := errors.Join(h.connect(ctx), h.start(ctx)); err != nil {
			return Result{}, err
		}
		scene, err := h.toCommit(ctx)
		if err != nil {
			return Result{}, err
		}
		body, err := answerTo(h.class.ID, scene)
		if err != nil {
			return Result{}, err
		}
		bare, err := spread(h.phones, func(*crowd.Phone) (time.Duration, error) {
			began := time.Now()
			err := b.site.Call(ctx, "POST", "answer", "", body, nil)
			return time.Since(began), err
		})
		if err != nil {
			return Result{}, err
		}
		ours, err := spread(h.phones, func(p *crowd.Phone) (time.Duration, error) { return p.Answer(ctx, h.class, engine.Version, body) })
		if err != nil {
			return Result{}, err
		}
		committed, err := h.committed(ctx, scene)
		if err != nil {
			return Result{}, err
		}
		lost := len(h.phones) - committed
		p99 := crowd.Percentile(ours, 0.99)
		return Result{
			Ours: map[string]float64{"p99_ms": p99, "lost": float64(lost)}, Control: crowd.Percentile(bare, 0.99),
			Holds: p99 <= answerGoalMS && lost == 0,
			How: fmt.Sprintf("%d phones commit within %v, each acknowledged only when durable and entered in the class (median %.1f ms), while all are connected; lost: answers missing from the class's report; control: the same bodies into bbolt's Batch (2 ms, 200) behind net/http",
				len(h.phones), answerWithin, crowd.Percentile(ours, 0.5)),
		}, nil
	},
}

// toCommit steps to the first scene's commit and returns the scene's id.
func (h *hall) toCommit(ctx context.Context) (scene string, err error) {
	scene = h.scenes[0]
	h.seq, err = h.class.Do(ctx, map[string]any{"kind": "stepped", "to": "commit", "scene": scene})
	return scene, err
}

// answerTo is a whole answer to a scene of a class, with the verdict as a phone
// shows it.
func answerTo(class, scene string) (map[string]any, error) {
	item, err := content.Item(classScene, 1)
	if err != nil {
		return nil, err
	}
	level, sure := 2, 0.8
	answer := quiz.Answer{V: 1, Engine: item.Engine, Content: item.Content, Family: classScene, Seed: 1, TookS: 21, Confidence: &sure}
	for _, ask := range item.Question.Asks {
		answer.Replies = append(answer.Replies, quiz.Reply{Ask: ask.ID, Level: &level})
	}
	verdict, err := content.Score(answer)
	if err != nil {
		return nil, err
	}
	return map[string]any{
		"answer": shape.Encode(answer), "verdict": shape.Encode(verdict),
		"class": map[string]any{"id": class, "scene": scene, "place": "a"},
	}, nil
}

// spread lets every phone do something at its own moment of a second.
func spread(phones []*crowd.Phone, do func(*crowd.Phone) (time.Duration, error)) ([]time.Duration, error) {
	var mu sync.Mutex
	var took []time.Duration
	began := time.Now()
	err := crowd.Each(phones, len(phones), func(n int, p *crowd.Phone) error {
		time.Sleep(time.Until(began.Add(answerWithin * time.Duration(n) / time.Duration(len(phones)))))
		one, err := do(p)
		mu.Lock()
		took = append(took, one)
		mu.Unlock()
		return err
	})
	slices.Sort(took)
	return took, err
}

// committed counts who has an answer to a scene in the class's report.
func (h *hall) committed(ctx context.Context, scene string) (int, error) {
	report, err := h.class.Report(ctx)
	if err != nil {
		return 0, err
	}
	count := 0
	for _, person := range report.People {
		for _, answer := range person.Answers {
			if answer.Scene == scene {
				count++
			}
		}
	}
	return count, nil
}
