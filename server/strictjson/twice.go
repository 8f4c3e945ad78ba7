package strictjson

import (
	"bytes"
	"encoding/json"
	"strings"

	"lintel/engine"
)

// names are those of one object. Two that differ in case are two: a device may keep
// both in a body of its own, and one that was refused would hold up all that waits
// behind it.
type names map[string]bool

// keptNames is how many names a map may have held to be used again: emptying one
// takes as long as it was ever large. Chosen by us.
const keptNames = 64

// inside is an object or a list that is open, and the part of it that is read.
type inside struct {
	object bool
	name   string
	item   int
	names  names
}

// twice returns the path to the first name that stands twice in one object of a
// text that is JSON already. It reads the bytes themselves: token by token with
// encoding/json it takes three times as long as decoding does.
func twice(text []byte) (where string, found bool) {
	var open []inside
	for at := 0; at < len(text); at++ {
		switch text[at] {
		case '{', '[':
			open = enter(open, text[at] == '{')
		case '}', ']':
			open = open[:len(open)-1]
		case ',':
			open[len(open)-1].item++
		case '"':
			end := endOfText(text, at)
			if isName := bytes.HasPrefix(bytes.TrimLeft(text[end:], " \t\r\n"), []byte(":")); isName {
				if !open[len(open)-1].take(text[at:end]) {
					return pathTo(open), true
				}
			}
			at = end - 1
		}
	}
	return "", false
}

// enter opens one more object or list. A map that an object as deep as it used
// before serves again.
func enter(open []inside, object bool) []inside {
	if len(open) == cap(open) {
		open = append(open, inside{})[:len(open)]
	}
	open = open[:len(open)+1]
	now := &open[len(open)-1]
	now.object, now.item = object, 0
	if object && (now.names == nil || len(now.names) > keptNames) {
		now.names = names{}
	}
	clear(now.names)
	return open
}

// take notes a name as it is written and reports whether it is new here.
func (i *inside) take(written []byte) bool {
	i.name = string(written[1 : len(written)-1])
	if strings.Contains(i.name, `\`) {
		// The text was decoded before: its strings are in order.
		_ = json.Unmarshal(written, &i.name)
	}
	if i.names[i.name] {
		return false
	}
	i.names[i.name] = true
	return true
}

// endOfText is the place behind a string that begins at from.
func endOfText(text []byte, from int) int {
	for at := from + 1; ; at++ {
		switch text[at] {
		case '\\':
			at++
		case '"':
			return at + 1
		}
	}
}

func pathTo(open []inside) string {
	path := ""
	for _, i := range open {
		if i.object {
			path = engine.Under(path, i.name)
		} else {
			path = engine.Nth(path, i.item)
		}
	}
	return path
}
