package desk

import (
	"encoding/json"
	"errors"
	"strconv"
	"strings"

	"lintel/engine"
	"lintel/quiz"
)

// claim is one device holding a seat, with one of its places: what the device
// recorded after After and up to Until (0 while it holds the seat) is the
// person's.
type claim struct {
	Device string `json:"device"`
	Place  string `json:"place"`
	After  uint64 `json:"after"`
	Until  uint64 `json:"until"`
	Open   bool   `json:"open"`
	AtMS   int64  `json:"at_ms"`
}

// holder is the claim that stands, or nil.
func (s *seat) holder() *claim {
	if n := len(s.Claims); n > 0 && s.Claims[n-1].Open {
		return &s.Claims[n-1]
	}
	return nil
}

// ClaimCode makes the one-time token of a seat; older ones die.
func (d *Desk) ClaimCode(by quiz.Instructor, rosterID, seatID string) (token string, untilMS int64, err error) {
	row, err := d.rosters().get(rosterID)
	if err != nil {
		return "", 0, err
	}
	s := row.value.seatOf(seatID)
	if s == nil {
		return "", 0, quiz.ErrNoDoc
	}
	older, err := d.spent(func(_ string, k *key) bool { return k.Kind == claimKey && k.Of == rosterID && k.Seat == seatID })
	if err != nil {
		return "", 0, err
	}
	token = Secret(16)
	doc, untilMS, err := d.cut(key{Kind: claimKey, Of: rosterID, Seat: seatID}, token)
	if err != nil {
		return "", 0, err
	}
	return token, untilMS, d.store.Save(quiz.Deed{By: by.CallSign, Did: "claim_code", What: s.CallSign}, append(older, doc)...)
}

// Claimed is a seat that a device took.
type Claimed struct {
	Roster   string `json:"roster"`
	Seat     string `json:"seat"`
	CallSign string `json:"call_sign"`
	Place    string `json:"place"`
}

// Claim gives a seat to a place of a device. The seat's history goes along: what
// the device that held it recorded so far stays the person's. A place that held
// another seat leaves it.
func (d *Desk) Claim(device, token, place string) (Claimed, error) {
	if place != "a" && place != "b" {
		return Claimed{}, engine.Bad("place", "is not a place on a phone", "use a or b")
	}
	k, err := d.find(claimKey, token)
	if errors.Is(err, quiz.ErrNoDoc) {
		return Claimed{}, ErrWrongCode
	}
	if err != nil {
		return Claimed{}, err
	}
	row, err := d.rosters().get(k.value.Of)
	if err != nil {
		return Claimed{}, ErrWrongCode
	}
	s := row.value.seatOf(k.value.Seat)
	if s == nil {
		return Claimed{}, ErrWrongCode
	}
	left, before, err := d.leave(device, place, row.id)
	if err != nil {
		return Claimed{}, err
	}
	if err := d.take(&row.value, s, device, place, before); err != nil {
		return Claimed{}, err
	}
	doc, err := d.rosters().doc(row)
	if err != nil {
		return Claimed{}, err
	}
	deed := quiz.Deed{By: "phone of " + s.CallSign, Did: "claim", What: s.CallSign}
	return Claimed{Roster: row.value.Title, Seat: s.ID, CallSign: s.CallSign, Place: place}, d.store.Save(deed, append(left, doc, d.keys().gone(k))...)
}

// take closes the seat's claim that stands and any other of the place in this
// roster, and opens a new one.
func (d *Desk) take(r *roster, s *seat, device, place string, heldBefore bool) error {
	for i := range r.Seats {
		other := r.Seats[i].holder()
		if other == nil || r.Seats[i].ID != s.ID && (other.Device != device || other.Place != place) {
			continue
		}
		heldBefore = heldBefore || r.Seats[i].ID != s.ID
		if err := d.shut(other); err != nil {
			return err
		}
	}
	after := uint64(0)
	if heldBefore {
		acked, err := d.store.Acked(device)
		if err != nil {
			return err
		}
		after = acked
	}
	for _, c := range s.Claims {
		if c.Device == device && c.Place == place {
			after = max(after, c.Until)
		}
	}
	s.Claims = append(s.Claims, claim{Device: device, Place: place, After: after, Open: true, AtMS: d.now().UnixMilli()})
	return nil
}

// shut ends a claim with what its device has recorded so far.
func (d *Desk) shut(c *claim) error {
	acked, err := d.store.Acked(c.Device)
	if err != nil && !errors.Is(err, quiz.ErrUnknownDevice) {
		return err
	}
	c.Until, c.Open = acked, false
	return nil
}

// leave shuts what the place holds in other rosters, and says whether it ever
// held a seat there.
func (d *Desk) leave(device, place, but string) (docs []quiz.Doc, before bool, err error) {
	err = d.rosters().each(func(row held[roster]) error {
		if row.id == but {
			return nil
		}
		changed := false
		for i := range row.value.Seats {
			for _, c := range row.value.Seats[i].Claims {
				before = before || c.Device == device && c.Place == place
			}
			if c := row.value.Seats[i].holder(); c != nil && c.Device == device && c.Place == place {
				changed = true
				if err := d.shut(c); err != nil {
					return err
				}
			}
		}
		if !changed {
			return nil
		}
		doc, err := d.rosters().doc(row)
		docs = append(docs, doc)
		return err
	})
	return docs, before, err
}

// SeatsOf lists the seats that a device holds, by place.
func (d *Desk) SeatsOf(device string) ([]Claimed, error) {
	all := []Claimed{}
	err := d.rosters().each(func(row held[roster]) error {
		for i := range row.value.Seats {
			s := &row.value.Seats[i]
			if c := s.holder(); c != nil && c.Device == device {
				all = append(all, Claimed{Roster: row.value.Title, Seat: s.ID, CallSign: s.CallSign, Place: c.Place})
			}
		}
		return nil
	})
	return all, err
}

// SeatAt is the seat that a place of a device holds in a roster, or nil.
func (d *Desk) SeatAt(rosterID, device, place string) (*Claimed, error) {
	row, err := d.rosters().get(rosterID)
	if err != nil {
		return nil, err
	}
	for i := range row.value.Seats {
		s := &row.value.Seats[i]
		if c := s.holder(); c != nil && c.Device == device && c.Place == place {
			return &Claimed{Roster: row.value.Title, Seat: s.ID, CallSign: s.CallSign, Place: place}, nil
		}
	}
	return nil, nil
}

// SeatRecords returns a page of a person's history, on whatever devices it was
// made. At is where the last page ended, empty for the first.
func (d *Desk) SeatRecords(rosterID, seatID, at string, limit int) (records []quiz.Record, next string, err error) {
	row, err := d.rosters().get(rosterID)
	if err != nil {
		return nil, "", err
	}
	s := row.value.seatOf(seatID)
	if s == nil {
		return nil, "", quiz.ErrNoDoc
	}
	return d.records(s.Claims, at, limit)
}

// OwnRecords is SeatRecords for the device that holds the seat.
func (d *Desk) OwnRecords(device, place, at string, limit int) (records []quiz.Record, next string, err error) {
	var claims []claim
	err = d.rosters().each(func(row held[roster]) error {
		for i := range row.value.Seats {
			if c := row.value.Seats[i].holder(); c != nil && c.Device == device && c.Place == place {
				claims = row.value.Seats[i].Claims
				return errDone
			}
		}
		return nil
	})
	if !errors.Is(err, errDone) {
		return nil, "", errors.Join(quiz.ErrNoDoc, err)
	}
	return d.records(claims, at, limit)
}

func (d *Desk) records(claims []claim, at string, limit int) (records []quiz.Record, next string, err error) {
	first, after, err := cursor(at)
	if err != nil {
		return nil, "", err
	}
	size := 0
	for i := first; i < len(claims); i++ {
		c := claims[i]
		if i > first || after < c.After {
			after = c.After
		}
		for {
			got, err := d.store.Records(c.Device, after, limit)
			if errors.Is(err, quiz.ErrUnknownDevice) || err == nil && len(got) == 0 {
				break // erased, or read to the end
			}
			if err != nil {
				return nil, "", err
			}
			for _, r := range got {
				if !c.Open && r.Seq > c.Until {
					break
				}
				if placeOf(r) == c.Place {
					records, size = append(records, r), size+len(r.Body)
				}
				if len(records) == limit || size >= quiz.PageBytes {
					return records, strconv.Itoa(i) + "." + strconv.FormatUint(r.Seq, 10), nil
				}
			}
			if after = got[len(got)-1].Seq; !c.Open && after >= c.Until {
				break
			}
		}
	}
	return records, "", nil
}

func cursor(at string) (claim int, after uint64, err error) {
	if at == "" {
		return 0, 0, nil
	}
	first, second, _ := strings.Cut(at, ".")
	claim, err1 := strconv.Atoi(first)
	after, err2 := strconv.ParseUint(second, 10, 64)
	if err1 != nil || err2 != nil || claim < 0 {
		return 0, 0, engine.Bad("after", "is not where a page ended", "give the next of the page before")
	}
	return claim, after, nil
}

// placeOf is who of those on a phone made a record: alone, it is the first.
func placeOf(r quiz.Record) string {
	var body struct {
		Class quiz.ClassRef `json:"class"`
	}
	if json.Unmarshal(r.Body, &body) == nil && body.Class.Place != "" {
		return body.Class.Place
	}
	return "a"
}
