package wire

import (
	"math"
	"strings"
)

// A tree crosses to JavaScript as one text and one list of numbers: value by value
// each would cost a call and a handle there, and those were most of a reading. The
// text is JSON with a mark for every number; the numbers travel by themselves, since
// to spell and read them to the last bit takes tables that weigh 15 kB.

// numberMark stands for a number. JSON has no such byte, not even in its strings.
const numberMark = "\x01"

// Spell writes a tree as JSON with its numbers apart, in order.
func Spell(tree any) (text string, numbers []float64) {
	var s speller
	s.value(tree)
	return string(s.text), s.numbers
}

type speller struct {
	text    []byte
	numbers []float64
}

func (s *speller) put(text string) { s.text = append(s.text, text...) }

func (s *speller) value(tree any) {
	switch v := tree.(type) {
	case nil:
		s.put("null")
	case bool:
		word := "false"
		if v {
			word = "true"
		}
		s.put(word)
	case string:
		s.quote(v)
	case int:
		s.number(float64(v))
	case float64:
		s.number(v)
	case []any:
		before := "["
		for _, item := range v {
			s.put(before)
			s.value(item)
			before = ","
		}
		s.end(before, "[", "]")
	case map[string]any:
		before := "{"
		for name, item := range v {
			s.put(before)
			s.quote(name)
			s.put(":")
			s.value(item)
			before = ","
		}
		s.end(before, "{", "}")
	default:
		panic("wire: a plain tree holds no such value")
	}
}

// end closes a list or an object, and opens it first where nothing was in it.
func (s *speller) end(before, open, shut string) {
	if before == open {
		s.put(open)
	}
	s.put(shut)
}

func (s *speller) number(x float64) {
	if x == 0 && math.Float64bits(x) != 0 { // JavaScript spells it without its sign
		s.put("-0")
		return
	}
	s.put(numberMark)
	s.numbers = append(s.numbers, x)
}

func (s *speller) quote(text string) {
	const hex = "0123456789abcdef"
	s.put(`"`)
	from := 0
	for at := range len(text) {
		if c := text[at]; c < ' ' || c == '"' || c == '\\' {
			s.put(text[from:at])
			s.put(`\u00`)
			s.put(hex[c>>4:][:1])
			s.put(hex[c&15:][:1])
			from = at + 1
		}
	}
	s.put(text[from:])
	s.put(`"`)
}

// Fill puts numbers, spelled and with commas between them, where the marks are.
func Fill(text, numbers string) string {
	var filled speller
	for {
		before, after, marked := strings.Cut(text, numberMark)
		filled.put(before)
		if !marked {
			return string(filled.text)
		}
		next, rest, _ := strings.Cut(numbers, ",")
		filled.put(next)
		text, numbers = after, rest
	}
}

// NumbersIn lists the numbers of a JSON text as they stand, with commas between
// them. Plain is false where Tree does not read the text: where it holds a null,
// which JavaScript writes for a number that is none, too, or an escaped character.
func NumbersIn(text string) (numbers string, plain bool) {
	if strings.IndexByte(text, '\\') >= 0 {
		return "", false
	}
	var list speller
	before := ""
	for at := 0; at < len(text); at++ {
		switch c := text[at]; {
		case c == '"':
			at += 1 + strings.IndexByte(text[at+1:], '"')
		case c == 'n':
			return "", false
		case c == '-' || c >= '0' && c <= '9':
			end := numberEnd(text, at)
			list.put(before)
			list.put(text[at:end])
			before, at = ",", end-1
		}
	}
	return string(list.text), true
}

func numberEnd(text string, at int) int {
	for at < len(text) && text[at] != ',' && text[at] != ']' && text[at] != '}' {
		at++
	}
	return at
}

// Tree makes the plain tree of a JSON text as JSON.stringify writes it, without
// blanks and whole; numbers are those that stand in it, in order.
func Tree(text string, numbers []float64) any {
	r := reader{text: text, numbers: numbers}
	return r.value()
}

type reader struct {
	text    string
	at      int
	numbers []float64
}

func (r *reader) value() any {
	switch r.text[r.at] {
	case '{':
		fields := map[string]any{}
		for r.more('}') {
			name := r.quoted()
			r.at++ // the colon
			fields[name] = r.value()
		}
		return fields
	case '[':
		items := []any{}
		for r.more(']') {
			items = append(items, r.value())
		}
		return items
	case '"':
		return r.quoted()
	case 't':
		r.at += len("true")
		return true
	case 'f':
		r.at += len("false")
		return false
	}
	r.at = numberEnd(r.text, r.at)
	x := r.numbers[0]
	r.numbers = r.numbers[1:]
	return x
}

// more steps over the bracket or comma before the next item, or over the end.
func (r *reader) more(end byte) bool {
	r.at++
	switch {
	case r.text[r.at-1] == end:
		return false
	case r.text[r.at] == end: // nothing was in it
		r.at++
		return false
	}
	return true
}

func (r *reader) quoted() string {
	from := r.at + 1
	to := from + strings.IndexByte(r.text[from:], '"')
	r.at = to + 1
	return r.text[from:to]
}
