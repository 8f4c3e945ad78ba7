package keep

import (
	"context"
	"encoding/json"
	"errors"
	"io"
	"net/url"
	"time"

	"lintel/engine"
	"lintel/quiz"
	"lintel/server/desk"
	"lintel/server/store"
)

// deskReply is what the desk says through the door.
type deskReply struct {
	Instructors []quiz.Instructor `json:"instructors,omitempty"`
	Code        string            `json:"code,omitempty"`
	UntilMS     int64             `json:"until_ms,omitempty"`
	Wrong       *engine.Problem   `json:"wrong,omitempty"`
}

func listed(d *desk.Desk) deskReply {
	all, err := d.Instructors()
	return deskReply{Instructors: all, Wrong: wrong(err)}
}

func reset(d *desk.Desk, callSign string) deskReply {
	code, until, err := d.ConsoleReset(callSign)
	return deskReply{Code: code, UntilMS: until, Wrong: wrong(err)}
}

func wrong(err error) *engine.Problem {
	var problem *engine.Problem
	if err == nil || errors.As(err, &problem) {
		return problem
	}
	return &engine.Problem{What: err.Error()}
}

// Instructors lists who may sign in, while a server runs or not.
func Instructors(ctx context.Context, data string) ([]quiz.Instructor, error) {
	reply, err := atDesk(ctx, data, "/instructors", listed)
	return reply.Instructors, err
}

// Reset makes a one-time code by which an instructor chooses a new pass phrase.
func Reset(ctx context.Context, data, callSign string) (code string, until time.Time, err error) {
	reply, err := atDesk(ctx, data, "/reset?call_sign="+url.QueryEscape(callSign), func(d *desk.Desk) deskReply { return reset(d, callSign) })
	return reply.Code, time.UnixMilli(reply.UntilMS), err
}

// atDesk asks the desk of a running server, or opens the store where none runs.
func atDesk(ctx context.Context, data, path string, ask func(*desk.Desk) deskReply) (reply deskReply, err error) {
	read := func(body io.Reader) error { return json.NewDecoder(body).Decode(&reply) }
	err = eitherWay(ctx, data, path, read, func(file string) error {
		s, err := store.OpenExisting(file)
		if err != nil {
			return err
		}
		reply = ask(desk.New(s, time.Now, desk.DefaultCost))
		return s.Close()
	})
	if err == nil && reply.Wrong != nil {
		return reply, reply.Wrong
	}
	return reply, err
}
