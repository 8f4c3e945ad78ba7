// Package class runs the classes of a server: it opens them, lets people join,
// takes the instructor's acts and the trainees' answers into each class's log,
// and holds the state that follows from it. What a class is stands in
// quiz/session; here are the clock, the store and the locks.
//
// A log's entry counts once it is durable and never before: entries are given to
// the store first, which says their place, and then settled in that order.
package class

import (
	"encoding/json"
	"errors"
	"log/slog"
	"sync"
	"time"

	"lintel/quiz"
	"lintel/quiz/session"
	"lintel/server/desk"
)

// Config is what classes need of the rest of the server.
type Config struct {
	Store   quiz.Store
	Desk    *desk.Desk
	Engine  string // versions that new classes run on
	Content string
	// Make works out a scene with every right reply to its asks.
	Make    func(quiz.Scene) (quiz.Item, [][]quiz.Reply, error)
	Choices []session.Choice // the families, for the next scene
	Now     func() time.Time
	Log     *slog.Logger
}

// Classes are the classes of a server. Make them with New.
type Classes struct {
	Config
	changed func(class string, devices []string, door bool)
	door    *door
	offers  offers

	mu    sync.Mutex
	rooms map[string]*room // open ones, and some that ended lately
}

// The errors of classes besides those of store, desk and engine.Problem.
var (
	ErrNoClass   = errors.New("there is no such class here: look at the list of classes")
	ErrNoEntry   = errors.New("no class can be joined by this: look at the code on the wall again; it may have changed, or the class be full or over")
	ErrSignTaken = errors.New("somebody in this class has this call sign already: choose another, or put a number to it")
	ErrNotIn     = errors.New("this device is not in the class: join it first")
	ErrNotLead   = errors.New("this phone does not lead the class any more: ask for a new code")
	ErrNoPerson  = errors.New("nobody in this class has that number: look at the board again")
)

// Refused is an act that the class does not allow as it stands.
type Refused struct{ Why error }

func (r *Refused) Error() string { return r.Why.Error() }
func (r *Refused) Unwrap() error { return r.Why }

// New returns the classes of a store, with those read in that may be joined still;
// any other is read when it is asked for.
// Call Tell before anything else.
func New(config Config) (*Classes, error) {
	c := &Classes{Config: config, rooms: map[string]*room{}, door: newDoor(config.Now), offers: offers{tokens: map[string]offer{}}, changed: func(string, []string, bool) {}}
	err := c.each(func(r row) error {
		if r.EndedMS != 0 || config.Now().UnixMilli() > r.OpenedMS+OpenFor.Milliseconds() {
			return nil
		}
		_, err := c.room(r.Class.ID)
		return err
	})
	return c, err
}

// Tell names who is to be told that a class has changed: with the devices whose
// own part has changed, and whether the way in has.
func (c *Classes) Tell(changed func(class string, devices []string, door bool)) { c.changed = changed }

// row is a class as kept beside its log.
type row struct {
	Class     session.Class `json:"class"`
	By        string        `json:"by"`
	OpenedMS  int64         `json:"opened_ms"`
	EndedMS   int64         `json:"ended_ms"`
	Token     string        `json:"token"`
	Code      string        `json:"code"`
	Projector string        `json:"projector"`
	Leads     []lead        `json:"leads,omitempty"`
}

// page is how many rows are read at a time (chosen by us).
const page = 500

// each visits every class that was ever opened.
func (c *Classes) each(visit func(row) error) error {
	for after := ""; ; {
		docs, err := c.Store.Docs(quiz.ClassDoc, after, page)
		if err != nil || len(docs) == 0 {
			return err
		}
		for _, doc := range docs {
			var r row
			if err := json.Unmarshal(doc.Body, &r); err != nil {
				return err
			}
			if err := visit(r); err != nil {
				return err
			}
		}
		after = docs[len(docs)-1].ID
	}
}

// maxEnded is how many ended classes are held in memory (chosen by us).
const maxEnded = 32

// room returns a class, read from the store where it is not held yet.
func (c *Classes) room(id string) (*room, error) {
	c.mu.Lock()
	defer c.mu.Unlock()
	if r, ok := c.rooms[id]; ok {
		return r, nil
	}
	r, err := c.load(id)
	if err != nil {
		return nil, err
	}
	c.makeRoom()
	c.rooms[id] = r
	if r.row.EndedMS == 0 {
		c.door.put(id, &r.row)
	}
	return r, nil
}

// makeRoom lets go of an ended class when many are held.
func (c *Classes) makeRoom() {
	ended, any := 0, ""
	for id, r := range c.rooms {
		if r.over() {
			ended, any = ended+1, id
		}
	}
	if ended >= maxEnded {
		delete(c.rooms, any)
	}
}

func (c *Classes) load(id string) (*room, error) {
	doc, err := c.Store.Doc(quiz.ClassDoc, id)
	if errors.Is(err, quiz.ErrNoDoc) {
		return nil, ErrNoClass
	}
	if err != nil {
		return nil, err
	}
	r := &room{classes: c, id: id, rev: doc.Rev, early: map[uint64]session.Entry{}, seen: map[string]int64{}}
	if err := json.Unmarshal(doc.Body, &r.row); err != nil {
		return nil, err
	}
	return r, r.read()
}

// State is a class as it stands.
func (c *Classes) State(id string) (session.State, error) {
	r, err := c.room(id)
	if err != nil {
		return session.State{}, err
	}
	return r.now(), nil
}
