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
	people := map[int]bool{} // who were ever on the device
	err = c.eachEntry(id, func(e session.Entry, of *session.Person) {
		if of != nil && of.Device == device {
			people[of.Number] = true
		}
	})
	if err != nil {
		return nil, err
	}
	err = c.eachEntry(id, func(e session.Entry, of *session.Person) {
		if without(&e, device, of != nil && people[of.Number]) {
			found = append(found, quiz.Line{Class: id, Seq: e.Seq, Body: spell(e)})
		}
	})
	return found, err
}

// eachEntry visits the entries of a class's log, each with the person that it is of,
// if any, as they stand after it.
func (c *Classes) eachEntry(id string, visit func(e session.Entry, of *session.Person)) error {
	var s session.State
	for {
		lines, err := c.Store.Lines(id, s.Seq, page)
		if err != nil || len(lines) == 0 {
			return err
		}
		for _, line := range lines {
			e, err := entryOf(line)
			if err != nil {
				return err
			}
			next := session.Settle(s, e)
			number := e.Person
			if len(next.People) > len(s.People) {
				number = len(next.People)
			}
			var of *session.Person
			if number >= 1 && number <= len(next.People) {
				of = next.People[number-1]
			}
			visit(e, of)
			s = next
		}
	}
}

// without takes a device, and the names of one who was ever on it, out of an entry,
// and says whether anything was there. One who was refused when joining counts too:
// a name is a name. What stands for the device keeps two people of one phone apart;
// another phone of theirs stays.
func without(e *session.Entry, device string, theirs bool) bool {
	m := e.Member
	switch {
	case m != nil && m.Device == device:
		e.Member = &session.Member{CallSign: Erased, Device: Erased + " " + secret(), Place: m.Place}
	case m != nil && theirs:
		e.Member = &session.Member{CallSign: Erased, Device: m.Device, Place: m.Place}
	case e.Kind == session.Renamed && theirs:
		e.CallSign = Erased
	default:
		return false
	}
	return true
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
