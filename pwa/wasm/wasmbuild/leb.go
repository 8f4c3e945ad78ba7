package wasmbuild

import "encoding/binary"

// Whole numbers as WebAssembly writes them (LEB128; core specification, section
// 5.2.2). The unsigned ones are encoding/binary's varints, the signed ones are not.

// reader reads a module from its front; left is what was not read yet.
type reader struct{ left []byte }

func (r *reader) take(n int) []byte {
	taken := r.left[:n]
	r.left = r.left[n:]
	return taken
}

func (r *reader) byte() (b byte, ok bool) {
	if len(r.left) == 0 {
		return 0, false
	}
	return r.take(1)[0], true
}

func (r *reader) unsigned() (n int, ok bool) {
	value, length := binary.Uvarint(r.left)
	if length <= 0 || value > 1<<32 {
		return 0, false
	}
	r.take(length)
	return int(value), true
}

func (r *reader) signed() (n int, ok bool) {
	for shift := 0; shift < 35; shift += 7 {
		b, more := r.byte()
		if !more {
			return 0, false
		}
		n |= int(b&0x7f) << shift
		if b&0x80 != 0 {
			continue
		}
		if b&0x40 != 0 {
			n -= 1 << (shift + 7)
		}
		return n, true
	}
	return 0, false
}

func appendSigned(to []byte, n int) []byte {
	for {
		b := byte(n & 0x7f)
		n >>= 7
		if n == 0 && b&0x40 == 0 || n == -1 && b&0x40 != 0 {
			return append(to, b)
		}
		to = append(to, b|0x80)
	}
}
