package class

import (
	"errors"

	"lintel/quiz"
	"lintel/quiz/session"
)

// Erased stands where a call sign stood before its owner had it taken out.
const Erased = "erased"

// Erase takes a device out of the server: its history, its seats, and its names
// and its id in the logs of every class. What it committed stays in the spread of
// those classes, as nobody's.
func (c *Classes) Erase(device string) error {
	lines, classes, err := c.nameless(device)
	if err != nil {
		return err
	}
	if err := c.Desk.Erase(device, lines); err != nil {
		return err
	}
	for _, id := range classes {
		if err := c.reread(id); err != nil {
			return err
		}
	}
	return nil
}

// nameless makes the lines that name a device anew without it.
func (c *Classes) nameless(device string) (lines []quiz.Line, classes []string, err error) {
	err = c.each(func(r row) error {
		found, err := c.namelessIn(r.Class.ID, device)
		if len(found) > 0 {
			lines, classes = append(lines, found...), append(classes, r.Class.ID)
		}
		return err
	})
	return lines, classes, err
}

func (c *Classes) namelessIn(id, device string) (found []quiz.Line, err error) {
	var s session.State
	people := map[int]bool{} // the device's own
	for {
		lines, err := c.Store.Lines(id, s.Seq, page)
		if err != nil || len(lines) == 0 {
			return found, err
		}
		for _, line := range lines {
			e, err := entryOf(line)
			if err != nil {
				return nil, err
			}
			before := len(s.People)
			s = session.Settle(s, e)
			if len(s.People) > before && s.People[before].Device == device {
				people[before+1] = true
			}
			if without(&e, device, people) {
				found = append(found, quiz.Line{Class: id, Seq: line.Seq, Body: spell(e)})
			}
		}
	}
}

// without takes a device and its people's names out of an entry, and says whether
// anything was there. One who was refused when joining counts too: a name is a
// name. What stands for the device keeps two people of one phone apart.
func without(e *session.Entry, device string, people map[int]bool) bool {
	switch {
	case e.Kind == session.Joined && e.Member != nil && e.Member.Device == device:
		e.Member = &session.Member{CallSign: Erased, Device: Erased + " " + secret(), Place: e.Member.Place}
		return true
	case e.Kind == session.Renamed && people[e.Person]:
		e.CallSign = Erased
		return true
	}
	return false
}

// reread takes a class from its log anew.
func (c *Classes) reread(id string) error {
	fresh, err := c.load(id)
	if err != nil {
		return err
	}
	c.mu.Lock()
	held := c.rooms[id]
	c.mu.Unlock()
	if held == nil {
		return nil
	}
	held.mu.Lock()
	shorter := fresh.state.Seq < held.state.Seq
	if !shorter {
		held.state = fresh.state
	}
	held.mu.Unlock()
	if shorter {
		return errors.New("class: the log is shorter than it was")
	}
	// One entry more, so that every board draws itself anew.
	_, err = held.enter(quiz.Deed{}, session.Entry{Kind: session.Locked, By: Erased, On: fresh.state.Locked})
	return err
}
