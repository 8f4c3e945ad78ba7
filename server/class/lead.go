package class

import (
	"crypto/sha256"
	"encoding/hex"
	"slices"
	"sync"
	"time"

	"lintel/quiz"
	"lintel/server/desk"
)

// lead is a phone or tablet that leads one class. It is kept with the class, so
// that it still leads after a restart.
type lead struct {
	ID     string `json:"id"`
	Key    string `json:"key_sha256"`
	FromMS int64  `json:"from_ms"`
	Of     string `json:"of"` // the instructor who handed the class over, by id
	By     string `json:"by"` // and by call sign
}

// LeadTime is how long the token lasts by which a phone takes a class (the
// design's figure).
const LeadTime = 60 * time.Second

// offers are tokens that have been shown and not taken yet. In memory only: they
// outlive neither a minute nor the server.
type offers struct {
	mu     sync.Mutex
	tokens map[string]offer
}

type offer struct {
	class string
	by    quiz.Instructor
	until time.Time
}

// Lead is a phone that leads, as the board lists it.
type Lead struct {
	ID     string `json:"id"`
	FromMS int64  `json:"from_ms"`
	SeenMS int64  `json:"seen_ms"` // 0 when it has not been heard of since the server started
}

// OfferLead makes a one-time token by which a phone takes the lead of a class.
func (c *Classes) OfferLead(by quiz.Instructor, id string) (token string, untilMS int64, err error) {
	r, err := c.room(id)
	if err != nil {
		return "", 0, err
	}
	token = desk.Secret(16)
	now := c.Now()
	c.offers.mu.Lock()
	for held, o := range c.offers.tokens {
		if now.After(o.until) {
			delete(c.offers.tokens, held)
		}
	}
	c.offers.tokens[digest(token)] = offer{class: id, by: by, until: now.Add(LeadTime)}
	c.offers.mu.Unlock()
	kept := r.kept()
	return token, now.Add(LeadTime).UnixMilli(), c.Store.Save(quiz.Deed{By: by.CallSign, Did: "offer_lead", What: kept.Class.Title})
}

// TakeLead uses up a token and returns the class with the key to lead it.
func (c *Classes) TakeLead(token string) (class, key string, err error) {
	c.offers.mu.Lock()
	o, ok := c.offers.tokens[digest(token)]
	delete(c.offers.tokens, digest(token))
	c.offers.mu.Unlock()
	if !ok || c.Now().After(o.until) {
		return "", "", desk.ErrWrongCode
	}
	r, err := c.room(o.class)
	if err != nil {
		return "", "", err
	}
	key = o.class + desk.Secret(32)
	kept := r.kept()
	made := lead{ID: desk.Secret(8), Key: digest(key), FromMS: c.Now().UnixMilli(), Of: o.by.ID, By: o.by.CallSign}
	err = r.change(quiz.Deed{By: "phone of " + o.by.CallSign, Did: "take_lead", What: kept.Class.Title}, func(kept *row) { kept.Leads = append(slices.Clip(kept.Leads), made) })
	return o.class, key, err
}

// LeadOf returns the class that a key leads, and who leads it in words: a phone, in
// the name of the instructor who handed it the class, while that one is not shut out.
func (c *Classes) LeadOf(key string) (class, by string, err error) {
	if len(key) != 32+64 || !quiz.IsDeviceID(key[:32]) {
		return "", "", ErrNotLead
	}
	r, err := c.room(key[:32])
	if err != nil {
		return "", "", ErrNotLead
	}
	given := digest(key)
	leads := r.kept().Leads
	at := slices.IndexFunc(leads, func(l lead) bool { return l.Key == given })
	if at < 0 || !c.Desk.MayLead(leads[at].Of) {
		return "", "", ErrNotLead
	}
	r.mu.Lock()
	defer r.mu.Unlock()
	r.seen[leads[at].ID] = c.Now().UnixMilli()
	return r.id, "phone of " + leads[at].By, nil
}

// Leads lists the phones that lead a class.
func (c *Classes) Leads(id string) ([]Lead, error) {
	r, err := c.room(id)
	if err != nil {
		return nil, err
	}
	r.mu.Lock()
	defer r.mu.Unlock()
	all := []Lead{}
	for _, l := range r.row.Leads {
		all = append(all, Lead{ID: l.ID, FromMS: l.FromMS, SeenMS: r.seen[l.ID]})
	}
	return all, nil
}

// DropLead takes the lead from a phone.
func (c *Classes) DropLead(by, id, leadID string) error {
	r, err := c.room(id)
	if err != nil {
		return err
	}
	kept := r.kept()
	if !slices.ContainsFunc(kept.Leads, func(l lead) bool { return l.ID == leadID }) {
		return quiz.ErrNoDoc
	}
	err = r.change(quiz.Deed{By: by, Did: "drop_lead", What: kept.Class.Title}, func(kept *row) {
		kept.Leads = slices.DeleteFunc(slices.Clone(kept.Leads), func(l lead) bool { return l.ID == leadID })
	})
	if err == nil {
		c.changed(id, nil, true)
	}
	return err
}

func digest(secret string) string {
	sum := sha256.Sum256([]byte(secret))
	return hex.EncodeToString(sum[:])
}
