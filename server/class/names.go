package class

import (
	"slices"
	"strconv"
	"strings"

	"lintel/quiz"
	"lintel/quiz/session"
)

// In a class a call sign is one person's: on a board two of the same could not be
// told apart. That is checked before an entry goes into the log and not by the
// log's own rules, as an old log may hold two and its people keep their numbers.

// signed is a call sign that somebody is about to have: whom it is for, their number
// where they are in the class already, and the number of one who makes way for it.
type signed struct {
	sign, who      string
	person, yields int
}

// owner is who asks for a call sign: a place on a phone.
func owner(device, place string) string { return device + " " + place }

// onPaper is whoever asks without a phone.
const onPaper = ""

// tidy leaves single blanks in a call sign, so that two differ in more than blanks.
func tidy(callSign string) string { return strings.Join(strings.Fields(callSign), " ") }

// bearer is another than but who goes by a call sign, or nil. One who was
// removed has left theirs to others.
func bearer(s *session.State, sign string, but ...int) *session.Person {
	for _, p := range s.People {
		if !p.Removed && !slices.Contains(but, p.Number) && strings.EqualFold(p.CallSign, sign) {
			return p
		}
	}
	return nil
}

// hold keeps call signs for those who are about to have them until release is
// called: by then they stand in the state, or were given up. Of two who ask at the
// same moment the second is refused; one who asks twice is not.
func (r *room) hold(wanted ...signed) (release func(), err error) {
	r.mu.Lock()
	defer r.mu.Unlock()
	before := len(r.held)
	for _, w := range wanted {
		taken := slices.ContainsFunc(r.held, func(h signed) bool { return h.who != w.who && strings.EqualFold(h.sign, w.sign) })
		if taken || bearer(&r.state, w.sign, w.person, w.yields) != nil {
			r.held = r.held[:before]
			return nil, ErrSignTaken
		}
		r.held = append(r.held, w)
	}
	return func() { r.letGo(wanted) }, nil
}

func (r *room) letGo(signs []signed) {
	r.mu.Lock()
	defer r.mu.Unlock()
	for _, sign := range signs {
		if at := slices.Index(r.held, sign); at >= 0 {
			r.held = slices.Delete(r.held, at, at+1)
		}
	}
}

// coming is what lets a member in, and the call signs that go with it. Whoever holds
// a seat of the roster that somebody sits on is that person, on another phone; and
// the seat's call sign is theirs, even where one without a seat chose it first.
func coming(s *session.State, m *session.Member) ([]session.Entry, []signed) {
	who := owner(m.Device, m.Place)
	e, own := session.Entry{Kind: session.Joined, Member: m}, signed{sign: m.CallSign, who: who}
	if sits := s.Seated(m.Seat); sits != nil {
		e, own.person = session.Entry{Kind: session.Moved, Person: sits.Number, Member: m}, sits.Number
	}
	other := bearer(s, m.CallSign, own.person)
	if m.Seat == "" || other == nil || other.Seat != "" {
		return []session.Entry{e}, []signed{own}
	}
	yields := session.Entry{Kind: session.Renamed, Person: other.Number, CallSign: another(s, m.CallSign)}
	return []session.Entry{yields, e}, append(namedBy(*s, yields), signed{sign: m.CallSign, who: who, person: own.person, yields: other.Number})
}

// namedBy is the call sign that an instructor's act gives somebody, or gives back.
func namedBy(s session.State, e session.Entry) []signed {
	if e.Person < 1 || e.Person > len(s.People) {
		return nil
	}
	p := s.People[e.Person-1]
	switch {
	case e.Kind == session.Renamed:
		return []signed{{sign: e.CallSign, who: owner(p.Device, p.Place), person: e.Person}}
	case e.Kind == session.Removed && !e.On:
		return []signed{{sign: p.CallSign, who: owner(p.Device, p.Place), person: e.Person}}
	}
	return nil
}

// another is a call sign like one that is taken, with the first number that is free.
func another(s *session.State, sign string) string {
	for n := 2; ; n++ {
		ending := " " + strconv.Itoa(n)
		letters := []rune(sign)
		next := string(letters[:min(len(letters), quiz.MaxCallSign-len(ending))]) + ending
		if bearer(s, next) == nil {
			return next
		}
	}
}
