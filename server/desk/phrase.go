package desk

import (
	"crypto/rand"
	"crypto/subtle"
	"encoding/hex"
	"fmt"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"

	"golang.org/x/crypto/argon2"

	"lintel/engine"
)

// Cost is what working a pass phrase out takes.
type Cost struct {
	KiB    uint32
	Passes uint32
}

// DefaultCost is 19 MiB and two passes, on one lane (OWASP Password Storage Cheat
// Sheet, argon2id; from memory, to be confirmed). Measured at 15.5 ms on one core.
var DefaultCost = Cost{KiB: 19 << 10, Passes: 2}

const (
	phraseLanes = 1
	phraseBytes = 32
	saltBytes   = 16
)

// Limits of a pass phrase: the longer end is chosen by us, the shorter is what
// NIST SP 800-63B-4 asks of one used alone (15; from memory, to be confirmed).
const (
	minPhrase = 15
	maxPhrase = 128
)

func checkPhrase(where, phrase string) error {
	n := utf8.RuneCountInString(phrase)
	if !utf8.ValidString(phrase) || n < minPhrase || n > maxPhrase {
		return engine.Bad(where, "has "+strconv.Itoa(n)+" characters", "choose "+strconv.Itoa(minPhrase)+" to "+strconv.Itoa(maxPhrase)+", for instance four words of your own")
	}
	return nil
}

// lanes bound how many pass phrases are worked out at once. Those whom the server
// knows already have a lane of their own, so that strangers cannot fill it.
type lanes struct{ known, strangers chan struct{} }

func newLanes() lanes {
	return lanes{known: make(chan struct{}, 2), strangers: make(chan struct{}, 2)}
}

// laneWait is how long one may wait for a lane (chosen by us).
const laneWait = 3 * time.Second

func (l lanes) enter(known bool) (leave func(), err error) {
	lane := l.strangers
	if known {
		lane = l.known
	}
	patience := time.NewTimer(laneWait)
	defer patience.Stop()
	select {
	case lane <- struct{}{}:
		return func() { <-lane }, nil
	case <-patience.C:
		return nil, ErrHashing
	}
}

// hash spells a pass phrase in the PHC string format (with hex for the base64),
// with a fresh salt.
func (c Cost) hash(phrase string) string {
	salt := make([]byte, saltBytes)
	_, _ = rand.Read(salt)
	return c.spell(salt, c.work(phrase, salt))
}

func (c Cost) work(phrase string, salt []byte) []byte {
	return argon2.IDKey([]byte(phrase), salt, c.Passes, c.KiB, phraseLanes, phraseBytes)
}

func (c Cost) spell(salt, sum []byte) string {
	return fmt.Sprintf("$argon2id$v=19$m=%d,t=%d,p=%d$%x$%x", c.KiB, c.Passes, phraseLanes, salt, sum)
}

// nobodys is compared with when there is no such account, so that the time taken
// does not tell which call signs exist. No pass phrase fits it.
func (c Cost) nobodys() string { return c.spell(make([]byte, saltBytes), nil) }

// matches works a pass phrase out anew, at the cost that is written with it: a
// later version may ask for more.
func matches(kept, phrase string) bool {
	var c Cost
	var lanes int
	parts := strings.Split(kept, "$")
	if len(parts) != 6 {
		return false
	}
	if _, err := fmt.Sscanf(parts[3], "m=%d,t=%d,p=%d", &c.KiB, &c.Passes, &lanes); err != nil || lanes != phraseLanes || c.Passes == 0 {
		return false
	}
	salt, err1 := hex.DecodeString(parts[4])
	want, err2 := hex.DecodeString(parts[5])
	sum := c.work(phrase, salt)
	return err1 == nil && err2 == nil && subtle.ConstantTimeCompare(sum, want) == 1
}
