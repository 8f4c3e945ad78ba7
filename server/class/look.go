package class

import (
	"crypto/subtle"
	"maps"
	"slices"

	"lintel/quiz/session"
)

// Admit says whether a viewer may look at a class, and for a phone from which
// device. A board has been let in by its cookie already.
func (c *Classes) Admit(id string, hello session.Hello) error {
	r, err := c.room(id)
	if err != nil {
		return ErrNotIn
	}
	switch hello.Role {
	case session.Phone:
		device, err := c.Store.Authenticate(hello.Device, hello.Secret)
		if err != nil {
			return err
		}
		if s := r.now(); len(s.PlaceViews(device.ID)) == 0 {
			return ErrNotIn
		}
		return nil
	case session.Board:
		return nil
	case session.Lead:
		if of, _, err := c.LeadOf(hello.Key); err != nil || of != id {
			return ErrNotLead
		}
		return nil
	case session.Projector:
		kept := r.kept()
		if kept.EndedMS == 0 && subtle.ConstantTimeCompare([]byte(kept.Projector), []byte(hello.Key)) == 1 {
			return nil
		}
	}
	return ErrNotIn
}

// Attends reports whether a device is in a class that is going on.
func (c *Classes) Attends(device string) bool {
	c.mu.Lock()
	rooms := slices.Collect(maps.Values(c.rooms))
	c.mu.Unlock()
	return slices.ContainsFunc(rooms, func(r *room) bool {
		s := r.now()
		return !r.over() && len(s.PlaceViews(device)) > 0
	})
}

// Door is how a class is joined now, or nil.
func (c *Classes) Door(id string) *session.Door {
	r, err := c.room(id)
	if err != nil {
		return nil
	}
	kept := r.kept()
	return doorOf(&kept)
}

// Report is a class as it stands, for paper.
func (c *Classes) Report(id string) (session.Report, error) {
	s, err := c.State(id)
	if err != nil {
		return session.Report{}, err
	}
	return s.Report(c.Choices), nil
}

// Person is one person's part of it.
func (c *Classes) Person(id string, number int) (*session.PersonReport, error) {
	s, err := c.State(id)
	if err != nil {
		return nil, err
	}
	person := s.PersonReport(number)
	if person == nil {
		return nil, ErrNoPerson
	}
	return person, nil
}
