package class

import (
	"time"

	"lintel/engine"
	"lintel/quiz"
	"lintel/quiz/session"
)

// Way is by what somebody joins: a token or a code.
type Way struct {
	Token string
	Code  string
}

// Joined is a class that a device is in.
type Joined struct {
	Class  session.Class
	Places []session.PlaceView
}

// floor is how long it takes to be refused, whatever for (chosen by us): wrong,
// over and full cannot be told apart by the clock.
const floor = 20 * time.Millisecond

// Find returns the class that a way leads to. Refusals all read the same and all
// take the same time.
func (c *Classes) Find(way Way) (id string, err error) {
	began := time.Now()
	if way.Token != "" {
		id = c.door.byToken(way.Token)
	} else {
		var tired []string
		if id, tired = c.door.byCode(way.Code); len(tired) > 0 {
			c.growCodes(tired)
		}
	}
	if id == "" {
		return "", refuse(began)
	}
	return id, nil
}

func refuse(began time.Time) error {
	time.Sleep(time.Until(began.Add(floor)))
	return ErrNoEntry
}

// Takes says whether a class takes a device in, or has it already. It is asked
// before anything else about who joins, so that of a class that is locked, full or
// over nothing can be told by how a join is refused.
func (c *Classes) Takes(id, device string) error {
	began := time.Now()
	r, err := c.room(id)
	if err != nil {
		return err
	}
	s := r.now()
	if len(s.PlaceViews(device)) > 0 || c.sits(&s, device) {
		return nil
	}
	newcomer := &session.Member{CallSign: "newcomer", Device: device, Place: session.FirstPlace}
	if r.allowed(session.Entry{Kind: session.Joined, Member: newcomer}) == nil {
		return nil
	}
	if now := r.now(); len(now.PlaceViews(device)) > 0 { // pressed twice: the other came in between
		return nil
	}
	return refuse(began)
}

// Join takes the people on a device into a class: named are their call signs by
// place. Sent again it changes nothing, and brings back one who dropped out. A
// place that holds a seat of the class's roster joins under the seat's call sign,
// or carries on as the one who sat there on another phone.
func (c *Classes) Join(device quiz.Device, id string, named map[string]string) (Joined, error) {
	began := time.Now()
	r, err := c.room(id)
	if err != nil {
		return Joined{}, err
	}
	if len(named) == 0 {
		named = map[string]string{session.FirstPlace: device.CallSign}
	}
	joined, err := c.takeIn(r, device, named, began)
	if now := r.now(); err != nil && stand(&now, device.ID, named) { // pressed twice: the other came in between
		return r.joined(device.ID, began)
	}
	return joined, err
}

func (c *Classes) takeIn(r *room, device quiz.Device, named map[string]string, began time.Time) (Joined, error) {
	s := r.now()
	var entries []session.Entry
	var signs []signed
	for _, place := range []string{session.FirstPlace, session.SecondPlace} {
		sign, wanted := named[place]
		if !wanted || s.Find(device.ID, place) != nil {
			continue
		}
		member, err := c.member(&s, device.ID, place, sign)
		if err != nil {
			return Joined{}, err
		}
		come, has := coming(&s, member)
		entries, signs = append(entries, come...), append(signs, has...)
	}
	for _, e := range entries {
		if r.allowed(e) != nil {
			return Joined{}, refuse(began)
		}
	}
	release, err := r.hold(signs...)
	if err != nil {
		return Joined{}, err
	}
	defer release()
	if len(entries) > 0 {
		if _, err := r.enter(quiz.Deed{}, entries...); err != nil {
			return Joined{}, err
		}
	}
	return r.joined(device.ID, began)
}

// stand says whether every place that is named has somebody on the device.
func stand(s *session.State, device string, named map[string]string) bool {
	for place := range named {
		if s.Find(device, place) == nil {
			return false
		}
	}
	return true
}

// joined waits until the device's people are settled: another's entry may have
// to come first.
func (r *room) joined(device string, began time.Time) (Joined, error) {
	for {
		s := r.now()
		if places := s.PlaceViews(device); len(places) > 0 {
			return Joined{Class: s.Class, Places: places}, nil
		}
		if time.Since(began) > 2*patience {
			return Joined{}, refuse(began) // filled up meanwhile
		}
		time.Sleep(time.Millisecond)
	}
}

func (c *Classes) member(s *session.State, device, place, sign string) (*session.Member, error) {
	m := &session.Member{CallSign: tidy(sign), Device: device, Place: place}
	if s.Class.Roster != "" {
		seat, err := c.Desk.SeatAt(s.Class.Roster, device, place)
		if err == nil && seat != nil {
			m.CallSign, m.Seat = seat.CallSign, seat.Seat
		}
	}
	if !quiz.IsCallSign(m.CallSign) {
		return nil, engine.Bad("call_signs."+place, "is empty, too long or holds control characters", "choose 1 to 32 letters, digits and spaces")
	}
	return m, nil
}

// sits says whether a device holds the seat of somebody in the class: it is about to
// be their phone, and nobody new.
func (c *Classes) sits(s *session.State, device string) bool {
	if s.Class.Roster == "" {
		return false
	}
	for _, place := range []string{session.FirstPlace, session.SecondPlace} {
		seat, err := c.Desk.SeatAt(s.Class.Roster, device, place)
		if err == nil && seat != nil && s.Seated(seat.Seat) != nil {
			return true
		}
	}
	return false
}

// growCodes gives classes whose code was guessed at too often a longer one.
func (c *Classes) growCodes(ids []string) {
	for _, id := range ids {
		r, err := c.room(id)
		if err == nil {
			c.Log.Warn("codes are being guessed: the code of a class was made longer", "class", id)
			err = r.newDoor(quiz.Deed{By: "server", Did: "longer_code", What: "codes were being guessed"}, r.kept().Token, GrownLength)
		}
		if err != nil {
			c.Log.Error("code of a class not made longer", "class", id, "err", err)
		}
	}
}

// newDoor changes how a class is joined.
func (r *room) newDoor(deed quiz.Deed, token string, length int) error {
	code := r.classes.door.codeOf(length)
	if err := r.change(deed, func(kept *row) { kept.Token, kept.Code = token, code }); err != nil {
		return err
	}
	kept := r.kept()
	r.classes.door.put(r.id, &kept)
	r.classes.changed(r.id, nil, true)
	return nil
}

// NewDoor gives a class a new token and code; the old ones end.
func (c *Classes) NewDoor(by, id string) (session.Door, error) {
	r, err := c.room(id)
	if err != nil {
		return session.Door{}, err
	}
	kept := r.kept()
	if kept.EndedMS != 0 {
		return session.Door{}, &Refused{Why: engine.Bad("class", "has ended", "open another")}
	}
	if err := r.newDoor(quiz.Deed{By: by, Did: "new_code", What: kept.Class.Title}, secret(), len(kept.Code)); err != nil {
		return session.Door{}, err
	}
	kept = r.kept()
	return *doorOf(&kept), nil
}
