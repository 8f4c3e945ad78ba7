package quiz

import "unicode/utf8"

// IsCallSign reports whether s may be a call sign.
func IsCallSign(s string) bool { return isLine(s, MaxCallSign) }

// IsTitle reports whether s may name a set, a roster or a class.
func IsTitle(s string) bool { return isLine(s, MaxTitle) }

// IsNote reports whether s may be a note in an instructor's own words, of up to so many
// characters over several lines. It refuses what would be no words, or turn those after
// it around.
func IsNote(s string, most int) bool {
	if !utf8.ValidString(s) || utf8.RuneCountInString(s) > most {
		return false
	}
	for _, r := range s {
		if r != '\n' && in(r, unfit) {
			return false
		}
	}
	return true
}

// isLine accepts up to so many characters with something to see among them. It
// refuses control characters, marks that turn the direction of text around, and what
// is not seen, with each of which one call sign could be drawn as another; and letters
// that are piled so high with marks that they cover the lines around them.
func isLine(s string, most int) bool {
	if !utf8.ValidString(s) || utf8.RuneCountInString(s) > most {
		return false
	}
	seen, piled := false, 0
	for _, r := range s {
		if piled++; !in(r, marks) {
			piled = 0
		}
		if in(r, unseen) || piled > mostPiled {
			return false
		}
		seen = seen || !in(r, blanks)
	}
	return seen
}

// mostPiled marks on one letter are what any living script asks for that puts them
// down one by one, as Vietnamese (from memory, to be confirmed).
const mostPiled = 2

// Ranges of characters, first and last (Unicode 15; unseen is Cc, the property
// Default_Ignorable_Code_Point, the line and paragraph separators, the anchors of
// annotations and the blank of Braille; marks are the blocks of combining diacritical
// marks; from memory, to be confirmed). Spelled out, as Go's tables of all characters
// would come along to the phone.
var (
	unseen = [][2]rune{
		{0, 0x1f}, {0x7f, 0x9f}, {0xad, 0xad}, {0x34f, 0x34f}, {0x61c, 0x61c}, {0x115f, 0x1160}, {0x17b4, 0x17b5}, {0x180b, 0x180f},
		{0x200b, 0x200f}, {0x2028, 0x202e}, {0x2060, 0x206f}, {0x2800, 0x2800}, {0x3164, 0x3164}, {0xfe00, 0xfe0f}, {0xfeff, 0xfeff},
		{0xffa0, 0xffa0}, {0xfff0, 0xfffb}, {0x1bca0, 0x1bca3}, {0x1d173, 0x1d17a}, {0xe0000, 0xe0fff},
	}
	unfit  = [][2]rune{{0, 0x1f}, {0x7f, 0x9f}, {0x61c, 0x61c}, {0x200e, 0x200f}, {0x2028, 0x202e}, {0x2066, 0x2069}}
	marks  = [][2]rune{{0x300, 0x36f}, {0x483, 0x489}, {0x1ab0, 0x1aff}, {0x1dc0, 0x1dff}, {0x20d0, 0x20ff}, {0xfe20, 0xfe2f}}
	blanks = [][2]rune{{' ', ' '}, {0xa0, 0xa0}, {0x1680, 0x1680}, {0x2000, 0x200a}, {0x202f, 0x202f}, {0x205f, 0x205f}, {0x3000, 0x3000}}
)

func in(r rune, ranges [][2]rune) bool {
	for _, of := range ranges {
		if of[0] <= r && r <= of[1] {
			return true
		}
	}
	return false
}
