package desk

import (
	"crypto/rand"
	"crypto/subtle"
	"strings"
)

// alphabet are digits and letters without those that look like another: 0 O, 1 I
// L, 2 Z, 5 S, 8 B (chosen by us). U and V are too alike in handwriting: no U.
const alphabet = "34679ACDEFGHJKMNPQRTVWXY"

// NewCode is a code of so many characters to be read out or typed. Each
// character is one of 24, which is 4.58 bits.
func NewCode(length int) string {
	code := make([]byte, 0, length)
	for len(code) < length {
		var random [1]byte
		_, _ = rand.Read(random[:])
		// 240 is the largest multiple of 24 in a byte: above it, draw again.
		if n := int(random[0]); n < 240 {
			code = append(code, alphabet[n%len(alphabet)])
		}
	}
	return string(code)
}

// Tidy is a code as it was meant: people type small letters, spaces and dashes.
func Tidy(code string) string {
	return strings.Map(func(r rune) rune {
		if r == ' ' || r == '-' {
			return -1
		}
		return r
	}, strings.ToUpper(code))
}

// Spaced is a code in groups of four, as it is shown.
func Spaced(code string) string {
	var groups []string
	for len(code) > 4 {
		groups, code = append(groups, code[:4]), code[4:]
	}
	return strings.Join(append(groups, code), "-")
}

// longCode is the length of codes that nobody may ever guess: 73 bits, so that
// no rate limit is needed, which a stranger could use up.
const longCode = 16

func sameCode(held, given string) bool {
	return held != "" && subtle.ConstantTimeCompare([]byte(held), []byte(Tidy(given))) == 1
}
