package class

import (
	"cmp"
	"encoding/json"
	"runtime"
	"slices"
	"strconv"
	"sync"

	"lintel/engine"
	"lintel/quiz"
	"lintel/quiz/session"
	"lintel/server/desk"
)

// Plan is a class as an instructor opens it.
type Plan struct {
	Title     string            `json:"title"`
	Set       string            `json:"set,omitempty"`
	Scenes    []session.Planned `json:"scenes,omitempty"`
	Pace      session.Pace      `json:"pace"`
	Rehearsal bool              `json:"rehearsal,omitempty"`
	Roster    string            `json:"roster,omitempty"`
}

// Open opens a class.
func (c *Classes) Open(by quiz.Instructor, plan Plan) (session.Listed, error) {
	scenes, err := c.planned(plan)
	if err != nil {
		return session.Listed{}, err
	}
	if plan.Pace != session.Led && plan.Pace != session.Self {
		return session.Listed{}, engine.Bad("pace", "is not a pace", "use led or self")
	}
	if plan.Roster != "" {
		if _, err := c.Store.Doc(quiz.RosterDoc, plan.Roster); err != nil {
			return session.Listed{}, engine.Bad("roster", "is not one of the rosters here", "choose another, or none")
		}
	}
	r := row{Class: session.Class{
		ID: secret(), Title: plan.Title, Pace: plan.Pace, Rehearsal: plan.Rehearsal, Roster: plan.Roster, Engine: c.Engine, Content: c.Content,
	}, By: by.CallSign, OpenedMS: c.Now().UnixMilli(), Token: secret(), Code: c.door.freshCode(), Projector: secret()}
	if err := c.begin(r, scenes); err != nil {
		return session.Listed{}, err
	}
	return c.Listed(r.Class.ID)
}

// begin stores a class and its first entry.
func (c *Classes) begin(r row, scenes []session.Scene) error {
	body, err := json.Marshal(r)
	if err != nil {
		return err
	}
	if err := c.Store.Save(quiz.Deed{By: r.By, Did: "open_class", What: r.Class.Title}, quiz.Doc{Kind: quiz.ClassDoc, ID: r.Class.ID, Body: body}); err != nil {
		return err
	}
	opened, err := c.room(r.Class.ID)
	if err != nil {
		return err
	}
	_, err = opened.enter(quiz.Deed{}, session.Entry{Kind: session.Opened, By: r.By, Class: &r.Class, Scenes: scenes})
	return err
}

// planned makes the scenes of a plan ready.
func (c *Classes) planned(plan Plan) ([]session.Scene, error) {
	list := plan.Scenes
	if plan.Set != "" {
		set, err := c.Desk.Set(plan.Set)
		if err != nil {
			return nil, err
		}
		list = set.Scenes
	}
	if err := session.CheckPlan(plan.Title, list); err != nil {
		return nil, err
	}
	return c.makeAll(list)
}

// makeAll works scenes out on as many processors as there are, as each is a fire
// of its own.
func (c *Classes) makeAll(list []session.Planned) ([]session.Scene, error) {
	scenes, faults := make([]session.Scene, len(list)), make([]error, len(list))
	turns := make(chan struct{}, runtime.GOMAXPROCS(0))
	var all sync.WaitGroup
	for i := range list {
		turns <- struct{}{}
		all.Go(func() {
			scenes[i], faults[i] = c.make("s"+strconv.Itoa(i+1), list[i])
			<-turns
		})
	}
	all.Wait()
	for _, err := range faults {
		if err != nil {
			return nil, err
		}
	}
	return scenes, nil
}

// make works a scene out.
func (c *Classes) make(id string, planned session.Planned) (session.Scene, error) {
	item, truth, err := c.Make(planned.Scene())
	if err != nil {
		return session.Scene{}, err
	}
	return session.Scene{ID: id, Planned: planned, Item: item, Truth: truth}, nil
}

func secret() string { return desk.Secret(16) }

// Listed is one class as lists show it.
func (c *Classes) Listed(id string) (session.Listed, error) {
	r, err := c.room(id)
	if err != nil {
		return session.Listed{}, err
	}
	kept, s := r.kept(), r.now()
	return listed(&kept, &s), nil
}

func listed(r *row, s *session.State) session.Listed {
	out := session.Listed{Class: r.Class, OpenedMS: r.OpenedMS, EndedMS: r.EndedMS, By: r.By, Step: s.Step, Scenes: len(s.Scenes), People: s.Present()}
	if r.EndedMS == 0 {
		out.Door, out.Projector = &session.Door{Token: r.Token, Code: desk.Spaced(r.Code)}, r.Projector
	}
	return out
}

// maxListed is how many classes a list shows (chosen by us).
const maxListed = 200

// List is the classes, newest first. Of those that ended long ago it says how
// they were opened; only the others are read.
func (c *Classes) List() ([]session.Listed, error) {
	var rows []row
	err := c.each(func(r row) error { rows = append(rows, r); return nil })
	if err != nil {
		return nil, err
	}
	slices.SortFunc(rows, func(a, b row) int { return cmp.Compare(b.OpenedMS, a.OpenedMS) })
	all := []session.Listed{}
	for _, r := range rows[:min(len(rows), maxListed)] {
		c.mu.Lock()
		held := c.rooms[r.Class.ID]
		c.mu.Unlock()
		s := session.State{Point: session.Point{Step: session.Over}}
		if held != nil {
			r, s = held.kept(), held.now()
		}
		all = append(all, listed(&r, &s))
	}
	return all, nil
}
