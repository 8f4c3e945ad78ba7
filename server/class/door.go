package class

import (
	"crypto/sha256"
	"sync"
	"time"

	"lintel/quiz/session"
	"lintel/server/desk"
)

// How classes are joined, all chosen by us. A token is 128 bits and is never
// limited. A code is typed, so it is short while nobody guesses: CodeLength
// characters of 24. Each wrong code counts, from whatever address; when
// GuessesBorne have been counted since a class opened, its code grows to
// GrownLength and the board and the wall show the new one. So guessing slows nobody
// down and shuts nobody out, and its chance stays as Chance says.
const (
	CodeLength   = 8
	GrownLength  = 12
	Letters      = 24
	GuessesBorne = 10_000
	OpenFor      = 24 * time.Hour // after which nobody new may join
)

// Chance is the chance that one of so many guesses at codes hits one of so many
// classes: the first GuessesBorne at short codes, the rest at grown ones. Every
// guess is taken to be a new one, which is the most that can be had by guessing.
func Chance(guesses, classes int) float64 {
	short := min(guesses, GuessesBorne)
	return float64(classes) * (float64(short)/power(Letters, CodeLength) + float64(guesses-short)/power(Letters, GrownLength))
}

func power(base, exponent int) float64 {
	result := 1.0
	for range exponent {
		result *= float64(base)
	}
	return result
}

// door knows which token and which code leads to which class. Tokens are looked
// up by digest, so that a lookup tells nothing of their bytes.
type door struct {
	now func() time.Time

	mu      sync.Mutex
	tokens  map[[32]byte]string
	codes   map[string]string
	opened  map[string]int64 // class -> ms
	guesses map[string]int   // class -> wrong codes while it was open and its code short
}

func newDoor(now func() time.Time) *door {
	return &door{now: now, tokens: map[[32]byte]string{}, codes: map[string]string{}, opened: map[string]int64{}, guesses: map[string]int{}}
}

// put lets a class be joined by its token and code, and by no older ones.
func (d *door) put(id string, r *row) {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.drop(id)
	d.tokens[sha256.Sum256([]byte(r.Token))] = id
	d.codes[r.Code] = id
	d.opened[id] = r.OpenedMS
	if len(r.Code) < GrownLength {
		d.guesses[id] = 0
	}
}

// shut lets nobody join a class any more.
func (d *door) shut(id string) {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.drop(id)
}

func (d *door) drop(id string) {
	for token, of := range d.tokens {
		if of == id {
			delete(d.tokens, token)
		}
	}
	for code, of := range d.codes {
		if of == id {
			delete(d.codes, code)
		}
	}
	delete(d.opened, id)
	delete(d.guesses, id)
}

// byToken returns the class of a token, or nothing.
func (d *door) byToken(token string) string {
	d.mu.Lock()
	defer d.mu.Unlock()
	return d.fresh(d.tokens[sha256.Sum256([]byte(token))])
}

// byCode returns the class of a code, or nothing and the classes whose code has
// now been guessed at too often.
func (d *door) byCode(code string) (id string, tired []string) {
	d.mu.Lock()
	defer d.mu.Unlock()
	if id = d.fresh(d.codes[desk.Tidy(code)]); id != "" {
		return id, nil
	}
	for of := range d.guesses {
		d.guesses[of]++
		if d.guesses[of] >= GuessesBorne {
			tired = append(tired, of)
			delete(d.guesses, of)
		}
	}
	return "", tired
}

// fresh is the class unless it has been open for too long.
func (d *door) fresh(id string) string {
	if id == "" || d.now().UnixMilli() > d.opened[id]+OpenFor.Milliseconds() {
		return ""
	}
	return id
}

// freshCode is a code that leads nowhere yet.
func (d *door) freshCode() string { return d.codeOf(CodeLength) }

func (d *door) codeOf(length int) string {
	d.mu.Lock()
	defer d.mu.Unlock()
	for {
		if code := desk.NewCode(length); d.codes[code] == "" {
			return code
		}
	}
}

// doorOf is how a class is joined now, nil when it is not.
func doorOf(r *row) *session.Door {
	if r.EndedMS != 0 {
		return nil
	}
	return &session.Door{Token: r.Token, Code: desk.Spaced(r.Code)}
}
