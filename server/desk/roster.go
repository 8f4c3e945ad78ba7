package desk

import (
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"lintel/engine"
	"lintel/quiz"
)

// roster is a roster as kept.
type roster struct {
	Title string `json:"title"`
	Seats []seat `json:"seats"`
}

// seat is one person's place, with the devices that held it.
type seat struct {
	ID        string  `json:"id"`
	CallSign  string  `json:"call_sign"`
	Personnel string  `json:"personnel,omitempty"`
	Claims    []claim `json:"claims,omitempty"`
}

// NewSeat is a seat as an instructor gives it. Without an ID it is a new one;
// a known one keeps its number when Personnel is nil.
type NewSeat struct {
	ID        string  `json:"id,omitempty"`
	CallSign  string  `json:"call_sign"`
	Personnel *string `json:"personnel,omitempty"`
}

func (d *Desk) rosters() table[roster] { return table[roster]{d.store, quiz.RosterDoc} }

func shown(row held[roster]) quiz.Roster {
	out := quiz.Roster{ID: row.id, Title: row.value.Title, Seats: []quiz.Seat{}}
	for _, s := range row.value.Seats {
		seat := quiz.Seat{ID: s.ID, CallSign: s.CallSign, Numbered: s.Personnel != ""}
		if last := s.holder(); last != nil {
			seat.ClaimedMS = last.AtMS
		}
		out.Seats = append(out.Seats, seat)
	}
	return out
}

// Rosters lists them.
func (d *Desk) Rosters() ([]quiz.Roster, error) {
	all := []quiz.Roster{}
	err := d.rosters().each(func(row held[roster]) error {
		all = append(all, shown(row))
		return nil
	})
	return all, err
}

// SaveRoster makes a roster, or with an id changes one. A seat that is left out
// is taken away; the history of those who held it stays with their devices.
func (d *Desk) SaveRoster(by quiz.Instructor, id, title string, seats []NewSeat) (quiz.Roster, error) {
	row := held[roster]{id: newID()}
	did := "new_roster"
	if id != "" {
		known, err := d.rosters().get(id)
		if err != nil {
			return quiz.Roster{}, err
		}
		row, did = known, "roster"
	}
	if !quiz.IsTitle(title) {
		return quiz.Roster{}, engine.Bad("title", "is empty, too long or holds control characters", "give 1 to 80 characters")
	}
	fresh, err := seated(row.value.Seats, seats)
	if err != nil {
		return quiz.Roster{}, err
	}
	before := row.value.Seats
	row.value = roster{Title: title, Seats: fresh}
	doc, err := d.rosters().doc(row)
	if err != nil {
		return quiz.Roster{}, err
	}
	doc.Sheds = anyoneLeft(before, fresh)
	return shown(row), d.store.Save(quiz.Deed{By: by.CallSign, Did: did, What: title}, doc)
}

// anyoneLeft reports whether a seat, a call sign or a number is there no more.
func anyoneLeft(before, after []seat) bool {
	return slices.ContainsFunc(before, func(was seat) bool {
		return !slices.ContainsFunc(after, func(s seat) bool {
			return s.ID == was.ID && s.CallSign == was.CallSign && s.Personnel == was.Personnel
		})
	})
}

// seated checks the seats given and puts them in the place of those known.
func seated(known []seat, given []NewSeat) ([]seat, error) {
	if len(given) > quiz.MaxSeats {
		return nil, engine.Bad("seats", "are "+strconv.Itoa(len(given)), "keep a roster within "+strconv.Itoa(quiz.MaxSeats))
	}
	signs, numbers := map[string]int{}, map[string]int{}
	fresh := []seat{}
	for i, g := range given {
		where := "seats[" + strconv.Itoa(i) + "]"
		s, err := renewed(known, g, where)
		if err != nil {
			return nil, err
		}
		if other, taken := signs[folded(s.CallSign)]; taken {
			return nil, engine.Bad(where+".call_sign", "is "+s.CallSign+", as seats["+strconv.Itoa(other)+"] is", "give each person a call sign of their own")
		}
		if other, taken := numbers[s.Personnel]; taken && s.Personnel != "" {
			return nil, engine.Bad(where+".personnel", "is the number of seats["+strconv.Itoa(other)+"] too", "give each person their own number")
		}
		signs[folded(s.CallSign)], numbers[s.Personnel] = i, i
		fresh = append(fresh, s)
	}
	return fresh, nil
}

func renewed(known []seat, given NewSeat, where string) (seat, error) {
	s := seat{ID: Secret(8)}
	if given.ID != "" {
		found := false
		for i := range known {
			if known[i].ID == given.ID {
				s, found = known[i], true
			}
		}
		if !found {
			return s, engine.Bad(where+".id", "is no seat of this roster", "leave it out for a new seat")
		}
	}
	s.CallSign = strings.TrimSpace(given.CallSign)
	if !quiz.IsCallSign(s.CallSign) {
		return s, engine.Bad(where+".call_sign", "is empty, too long or holds control characters", "choose 1 to "+strconv.Itoa(quiz.MaxCallSign)+" letters, digits and spaces")
	}
	if given.Personnel != nil {
		s.Personnel = strings.TrimSpace(*given.Personnel)
	}
	if !isPersonnel(s.Personnel) {
		return s, engine.Bad(where+".personnel", "is too long or holds other than letters, digits, dots and dashes", "give the number as it is in your records, or none")
	}
	return s, nil
}

func isPersonnel(number string) bool {
	if utf8.RuneCountInString(number) > quiz.MaxPersonnel {
		return false
	}
	return strings.IndexFunc(number, func(r rune) bool {
		return !(r >= '0' && r <= '9' || r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r == '.' || r == '-' || r == '/')
	}) < 0
}

// DropRoster takes a roster away, with the codes for its seats.
func (d *Desk) DropRoster(by quiz.Instructor, id string) error {
	row, err := d.rosters().get(id)
	if err != nil {
		return err
	}
	docs, err := d.spent(func(_ string, k *key) bool { return k.Kind == claimKey && k.Of == id })
	if err != nil {
		return err
	}
	return d.store.Save(quiz.Deed{By: by.CallSign, Did: "drop_roster", What: row.value.Title}, append(docs, d.rosters().gone(row))...)
}

// seatOf finds a seat in a roster.
func (r *roster) seatOf(id string) *seat {
	for i := range r.Seats {
		if r.Seats[i].ID == id {
			return &r.Seats[i]
		}
	}
	return nil
}

// SeatName is the call sign on a seat.
func (d *Desk) SeatName(rosterID, seatID string) (string, error) {
	row, err := d.rosters().get(rosterID)
	if err != nil {
		return "", err
	}
	s := row.value.seatOf(seatID)
	if s == nil {
		return "", quiz.ErrNoDoc
	}
	return s.CallSign, nil
}
