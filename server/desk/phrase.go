package desk

import (
	"crypto/rand"
	"crypto/subtle"
	"encoding/hex"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"

	"golang.org/x/crypto/argon2"

	"lintel/engine"
)

// The cost of a pass phrase: 19 MiB, two passes, one lane (OWASP Password
// Storage Cheat Sheet, argon2id; from memory, to be confirmed). Measured at
// 15.5 ms on one core.
const (
	phraseKiB    = 19 << 10
	phrasePasses = 2
	phraseLanes  = 1
	phraseBytes  = 32
	saltBytes    = 16
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

// hash spells a pass phrase in the PHC string format, with a fresh salt.
func hash(phrase string) string {
	salt := make([]byte, saltBytes)
	_, _ = rand.Read(salt)
	return spell(salt, argon2.IDKey([]byte(phrase), salt, phrasePasses, phraseKiB, phraseLanes, phraseBytes))
}

func spell(salt, sum []byte) string {
	return "$argon2id$v=19$m=" + strconv.Itoa(phraseKiB) + ",t=" + strconv.Itoa(phrasePasses) + ",p=" + strconv.Itoa(phraseLanes) +
		"$" + hex.EncodeToString(salt) + "$" + hex.EncodeToString(sum)
}

// nobodys is compared with when there is no such account, so that the time taken
// does not tell which call signs exist.
var nobodys = spell(make([]byte, saltBytes), make([]byte, phraseBytes))

// matches works a pass phrase out anew. It takes as long for a hash of nobody.
func matches(kept, phrase string) bool {
	parts := strings.Split(kept, "$")
	if len(parts) != 6 || strings.Join(parts[:4], "$") != strings.Join(strings.Split(nobodys, "$")[:4], "$") {
		parts = strings.Split(nobodys, "$")
	}
	salt, err1 := hex.DecodeString(parts[4])
	want, err2 := hex.DecodeString(parts[5])
	sum := argon2.IDKey([]byte(phrase), salt, phrasePasses, phraseKiB, phraseLanes, phraseBytes)
	return err1 == nil && err2 == nil && kept != nobodys && subtle.ConstantTimeCompare(sum, want) == 1
}
