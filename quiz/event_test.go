package quiz

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/engine"
)

const (
	someDevice = "0123456789abcdef0123456789abcdef"
	someID     = "fedcba9876543210fedcba9876543210"
)

func someEvent(seq uint64) Event {
	return Event{V: 1, ID: someID, Device: someDevice, Seq: seq, Engine: "0.1.0", TClient: 1_790_000_000_000, Kind: NoteEvent, Body: Raw(`{"text":"wind backed"}`)}
}

func TestEventsAreValidated(t *testing.T) {
	good := someEvent(1)
	require.NoError(t, good.Validate("event"))
	for _, c := range []struct {
		where  string
		change func(*Event)
	}{
		{"v", func(e *Event) { e.V = 0 }},
		{"id", func(e *Event) { e.ID = strings.ToUpper(someID) }},
		{"id", func(e *Event) { e.ID = someID[1:] }},
		{"device", func(e *Event) { e.Device = someDevice + "0" }},
		{"device", func(e *Event) { e.Device = strings.Repeat("g", 32) }},
		{"seq", func(e *Event) { e.Seq = 0 }},
		{"seq", func(e *Event) { e.Seq = 1 << 53 }},
		{"engine", func(e *Event) { e.Engine = "a b" }},
		{"engine", func(e *Event) { e.Engine = strings.Repeat("x", 65) }},
		{"engine", func(e *Event) { e.Engine = "<script>" }},
		{"t_client", func(e *Event) { e.TClient = -1 }},
		{"t_client", func(e *Event) { e.TClient = maxClientMS + 1 }},
		{"kind", func(e *Event) { e.Kind = "" }},
		{"body", func(e *Event) { e.Body = nil }},
		{"body", func(e *Event) { e.Body = Raw(`"text"`) }},
		{"body", func(e *Event) { e.Body = Raw(`{"x":"` + strings.Repeat("x", MaxEventBytes) + `"}`) }},
	} {
		e := someEvent(1)
		c.change(&e)
		var problem *engine.Problem
		require.ErrorAs(t, e.Validate("event"), &problem)
		assert.Equal(t, "event."+c.where, problem.Where)
		assert.NotEmpty(t, problem.Do)
	}
}

func TestBatchesAreOneDevicesOwnAndInOrder(t *testing.T) {
	require.NoError(t, ValidateBatch(someDevice, []Event{someEvent(4), someEvent(5), someEvent(6)}))
	require.Error(t, ValidateBatch(someDevice, nil))
	require.Error(t, ValidateBatch(someDevice, make([]Event, MaxBatch+1)))
	require.Error(t, ValidateBatch(someID, []Event{someEvent(1)}), "another device")
	for _, torn := range [][]Event{{someEvent(1), someEvent(3)}, {someEvent(2), someEvent(1)}, {someEvent(1), someEvent(1)}} {
		require.ErrorIs(t, ValidateBatch(someDevice, torn), ErrGap)
	}
}

// The envelope is fixed: these are its names, and the body comes back as it was.
func TestTheEnvelopeOnTheWire(t *testing.T) {
	e := someEvent(7)
	text, err := json.Marshal(e)
	require.NoError(t, err)
	assert.JSONEq(t, `{"v":1,"id":"`+someID+`","device":"`+someDevice+`","seq":7,"engine":"0.1.0","t_client":1790000000000,"kind":"note","body":{"text":"wind backed"}}`, string(text))
	var back Event
	require.NoError(t, json.Unmarshal(text, &back))
	assert.Equal(t, e, back)

	var empty Event
	text, err = json.Marshal(empty)
	require.NoError(t, err)
	assert.Contains(t, string(text), `"body":null`)
}

// What is unmarshalled must not alias the reader's buffer, which is used again.
func TestRawCopies(t *testing.T) {
	buffer := []byte(`{"a":1}`)
	var raw Raw
	require.NoError(t, raw.UnmarshalJSON(buffer))
	buffer[2] = 'z'
	assert.Equal(t, `{"a":1}`, string(raw))
}
