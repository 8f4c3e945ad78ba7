package commandline

import "io"

// Plain is out for words that somebody else chose, names in a file for instance: what
// a terminal would obey of them, to recolour itself or to be called otherwise,
// becomes a question mark. Lines stay lines. Not for JSON or a table, where they are
// data.
func Plain(out io.Writer) io.Writer { return &plain{out: out} }

type plain struct {
	out  io.Writer
	last byte // of what was written, as a letter may come in two parts
}

// The control characters are those below a space, delete, and in UTF-8 C2 80 to C2 9F
// (ISO/IEC 6429, from memory, to be confirmed); C2 BF is an upside-down question mark.
func (p *plain) Write(text []byte) (int, error) {
	harmless := make([]byte, len(text))
	for i, b := range text {
		switch {
		case b < ' ' && b != '\n', b == 0x7f:
			harmless[i] = '?'
		case p.last == 0xc2 && b >= 0x80 && b < 0xa0:
			harmless[i] = 0xbf
		default:
			harmless[i] = b
		}
		p.last = b
	}
	return p.out.Write(harmless)
}
