package quiz

import (
	"strconv"

	"lintel/engine"
)

// EventKind says what an event records, and so what its body holds.
type EventKind string

// The kinds of event.
const (
	AnswerEvent EventKind = "answer"  // AnswerBody
	SizeUpEvent EventKind = "size_up" // the readings given and a summary of the finding
	NoteEvent   EventKind = "note"    // a remark in a person's own words
)

// EventKinds lists every kind.
var EventKinds = []EventKind{AnswerEvent, SizeUpEvent, NoteEvent}

// Limits of events. All are chosen by us: an answer with its whole verdict is
// about 10 kB, and a month offline drains in a few dozen batches.
const (
	EventVersion  = 1
	MaxEventBytes = 64 << 10 // of one body
	MaxBatch      = 100      // events in one request
	MaxCallSign   = 32       // characters
	MaxTitle      = 80       // characters
	MaxSeq        = 1<<53 - 1
	maxClientMS   = 8_640_000_000_000_000 // the last time a script's date can hold (ECMA-262, Time Values)
)

// Event is the envelope in which a device reports anything that happened. Its
// shape is fixed: devices write it while offline and send it weeks later. ID is
// 128 bits made on the device, in lower-case hex, as is Device. Seq counts from
// 1 on each device without a gap. TClient is the device's clock in milliseconds
// since 1970 UTC: it may be wrong, and nothing is ordered by it.
type Event struct {
	V       int       `json:"v"`
	ID      string    `json:"id"`
	Device  string    `json:"device"`
	Seq     uint64    `json:"seq"`
	Engine  string    `json:"engine"`
	TClient int64     `json:"t_client"`
	Kind    EventKind `json:"kind"`
	Body    Raw       `json:"body"`
}

// AnswerBody is the body of an answer event: what was committed, and the
// verdict the device showed. Class says where it was given, when in a class.
type AnswerBody struct {
	Answer  Answer    `json:"answer"`
	Verdict Verdict   `json:"verdict"`
	Class   *ClassRef `json:"class,omitempty"`
}

// ClassRef ties an answer to a scene of a class, and to one of the people who
// share the phone. An answer of a rehearsal is nobody's record.
type ClassRef struct {
	ID        string `json:"id"`
	Scene     string `json:"scene"`
	Place     string `json:"place"`
	Rehearsal bool   `json:"rehearsal,omitempty"`
}

// Raw is JSON text kept exactly as it was sent. The store holds a body as it
// came, even one that a newer device wrote and this server cannot read: a
// refused body would jam the device's outbox and lose what follows.
type Raw []byte

// MarshalJSON gives the text back as it was.
func (r Raw) MarshalJSON() ([]byte, error) {
	if len(r) == 0 {
		return []byte("null"), nil
	}
	return r, nil
}

// UnmarshalJSON keeps a copy of the text.
func (r *Raw) UnmarshalJSON(text []byte) error {
	*r = append((*r)[:0], text...)
	return nil
}

// Validate checks the envelope, not the body's meaning. Where is the path of
// the event in what was sent, e.g. "events[3]".
func (e *Event) Validate(where string) error {
	switch {
	case e.V != EventVersion:
		return engine.Bad(where+".v", "is "+strconv.Itoa(e.V), "send events of version "+strconv.Itoa(EventVersion))
	case !isHex(e.ID, 32):
		return engine.Bad(where+".id", "is not 128 bits of lower-case hex", "make 16 random bytes and spell them as 32 digits")
	case !isHex(e.Device, 32):
		return engine.Bad(where+".device", "is not 128 bits of lower-case hex", "give the id of the device that wrote the event")
	case e.Seq < 1 || e.Seq > MaxSeq:
		return engine.Bad(where+".seq", "is "+strconv.FormatUint(e.Seq, 10), "count events from 1 upward on each device")
	case !isWord(e.Engine):
		return engine.Bad(where+".engine", "is not a version", "name the engine version that the device ran")
	case e.TClient < 0 || e.TClient > maxClientMS:
		return engine.Bad(where+".t_client", "is "+strconv.FormatInt(e.TClient, 10), "give milliseconds since 1970 UTC")
	case !engine.Known(e.Kind, EventKinds):
		return engine.Bad(where+".kind", "is not a kind this server knows", "send "+engine.OneOf(EventKinds)+", or update the server")
	case len(e.Body) > MaxEventBytes:
		return engine.Bad(where+".body", "is "+strconv.Itoa(len(e.Body))+" bytes", "keep a body within "+strconv.Itoa(MaxEventBytes))
	case !isObject(e.Body):
		return engine.Bad(where+".body", "is not an object", "send {...}")
	}
	return nil
}

// ValidateBatch checks every envelope and that the batch is one device's events
// in order without a gap. It returns ErrGap for a hole in the sequence.
func ValidateBatch(device string, events []Event) error {
	if len(events) == 0 {
		return engine.Bad("events", "is empty", "send at least one event")
	}
	if len(events) > MaxBatch {
		return engine.Bad("events", "holds "+strconv.Itoa(len(events))+" events", "send at most "+strconv.Itoa(MaxBatch)+" at a time")
	}
	for i := range events {
		where := "events[" + strconv.Itoa(i) + "]"
		if err := events[i].Validate(where); err != nil {
			return err
		}
		if events[i].Device != device {
			return engine.Bad(where+".device", "is not the device that signed in", "send only this device's own events")
		}
		if i > 0 && events[i].Seq != events[i-1].Seq+1 {
			return ErrGap
		}
	}
	return nil
}

// ValidateDevice checks a device's own claim: its id, its 256-bit secret and
// the call sign its owner chose.
func ValidateDevice(device, secret, callSign string) error {
	switch {
	case !isHex(device, 32):
		return engine.Bad("device", "is not 128 bits of lower-case hex", "make 16 random bytes and spell them as 32 digits")
	case !isHex(secret, 64):
		return engine.Bad("secret", "is not 256 bits of lower-case hex", "make 32 random bytes and spell them as 64 digits")
	case !IsCallSign(callSign):
		return engine.Bad("call_sign", "is empty, too long or holds control characters", "choose 1 to "+strconv.Itoa(MaxCallSign)+" letters, digits and spaces")
	}
	return nil
}

// IsDeviceID reports whether s is spelled as a device id.
func IsDeviceID(s string) bool { return isHex(s, 32) }

// IsSecret reports whether s is spelled as a device's secret.
func IsSecret(s string) bool { return isHex(s, 64) }

func isHex(s string, digits int) bool {
	if len(s) != digits {
		return false
	}
	for i := range len(s) {
		if c := s[i]; (c < '0' || c > '9') && (c < 'a' || c > 'f') {
			return false
		}
	}
	return true
}

// isWord accepts a version: printable ASCII without spaces or quotes.
func isWord(s string) bool {
	if s == "" || len(s) > 64 {
		return false
	}
	for i := range len(s) {
		if c := s[i]; c <= ' ' || c > '~' || c == '"' || c == '\\' || c == '<' {
			return false
		}
	}
	return true
}

func isObject(text Raw) bool {
	return len(text) >= 2 && text[0] == '{' && text[len(text)-1] == '}'
}
