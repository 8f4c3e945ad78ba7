package engine

import (
	"strconv"
	"strings"
)

// checker walks an input and keeps the first problem it meets: a person mends
// one mistake at a time, and the first is often the cause of the rest.
type checker struct{ err error }

// fail records a problem unless one was met before.
func (c *checker) fail(where, what, do string) {
	if c.err == nil {
		c.err = Bad(where, what, do)
	}
}

// within demands a finite number from low to high.
func (c *checker) within(where string, x, low, high float64, unit string) {
	if !(x >= low && x <= high) { // written so that NaN fails too
		c.fail(where, "is "+number(x), "give a number from "+number(low)+" to "+number(high)+spaced(unit))
	}
}

// maybeWithin is within for a number that may be absent.
func (c *checker) maybeWithin(where string, x *float64, low, high float64, unit string) {
	if x != nil {
		c.within(where, *x, low, high, unit)
	}
}

// above demands a finite number above 0 and at most high.
func (c *checker) above(where string, x, high float64, unit string) {
	if !(x > 0 && x <= high) {
		c.fail(where, "is "+number(x), "give a number above 0 and at most "+number(high)+spaced(unit))
	}
}

// absent demands that a number which means nothing here was left out.
func (c *checker) absent(where string, given bool, because string) {
	if given {
		c.fail(where, "does not belong here", "leave it out, "+because)
	}
}

// count demands from low to high entries in a list.
func (c *checker) count(where string, n, low, high int) {
	switch {
	case n > high:
		c.fail(where, "has "+strconv.Itoa(n)+" entries", "give at most "+strconv.Itoa(high))
	case n < low:
		c.fail(where, "has "+strconv.Itoa(n)+" entries", "give at least "+strconv.Itoa(low))
	}
}

// version demands version 1 of a file.
func (c *checker) version(v int, file string) {
	if v != 1 {
		c.fail("v", "is "+strconv.Itoa(v), "write 1, the version of the "+file+" file that this program reads")
	}
}

// id demands a name fit to be pointed at, and not used before in seen.
func (c *checker) id(where, id string, seen map[string]bool) {
	switch {
	case id == "":
		c.fail(where, "is missing", "give a name")
	case id == Outside:
		c.fail(where, "is "+quote(id), "choose another name, this one means the open air")
	case len(id) > maxNameBytes:
		c.fail(where, "is "+strconv.Itoa(len(id))+" bytes long", "give at most "+strconv.Itoa(maxNameBytes))
	case seen[id]:
		c.fail(where, "is "+quote(id)+", which is taken", "give each one a name of its own")
	}
	seen[id] = true
}

// text demands a free text of bearable length.
func (c *checker) text(where, s string) {
	if len(s) > maxTextBytes {
		c.fail(where, "is "+strconv.Itoa(len(s))+" bytes long", "give at most "+strconv.Itoa(maxTextBytes))
	}
}

// word demands one of the listed words, or none at all.
func word[T ~string](c *checker, where string, w T, list []T) {
	if w != "" && !Known(w, list) {
		c.fail(where, "is "+quote(string(w)), "use "+OneOf(list))
	}
}

// Lengths of names and texts, chosen by us: long enough for any sensible one,
// short enough for a line on a phone.
const (
	maxNameBytes = 64
	maxTextBytes = 400
)

// quote shows a given word, cut short so that an error stays one line.
func quote(s string) string {
	if len(s) > maxNameBytes {
		s = s[:maxNameBytes] + "…"
	}
	return `"` + strings.Map(printable, s) + `"`
}

// printable keeps control characters and quotation marks out of an error's line.
func printable(r rune) rune {
	if r < ' ' || r == '"' || r == 0x7f || r == 0xfffd {
		return '?'
	}
	return r
}

func number(x float64) string { return Decimal(x, 6) }

func spaced(unit string) string {
	if unit == "" {
		return ""
	}
	return " " + unit
}

// entry spells a place in a list: openings[2].width_m.
func entry(list string, i int, field string) string {
	where := list + "[" + strconv.Itoa(i) + "]"
	if field != "" {
		where += "." + field
	}
	return where
}
