package strictjson_test

import (
	"encoding/json"
	"errors"
	"strings"
	"testing"
	"testing/iotest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/engine"
	"lintel/server/strictjson"
)

// What encoding/json accepts without reserve must come out the same.
func TestReadAgreesWithEncodingJSON(t *testing.T) {
	for _, text := range []string{
		`null`, `true`, `-1.5e3`, `"smoke\u00e9"`, `[]`, `{}`, ` { "a" : [1, {"b": null}, "c"] } `,
	} {
		var want any
		require.NoError(t, json.Unmarshal([]byte(text), &want))
		got, err := strictjson.Read(strings.NewReader(text), 1000)
		require.NoError(t, err, text)
		assert.Equal(t, want, got, text)
	}
}

func TestReadRefuses(t *testing.T) {
	cases := map[string]struct{ text, where, says string }{
		"nothing":        {"", "", "is empty"},
		"half an object": {`{"v":1,`, "", "is cut short"},
		"half a text":    {`{"v":"on`, "", "is cut short"},
		"not a number":   {`{"v":NaN}`, "", "not JSON"},
		"a huge number":  {`{"a":[0,1e999]}`, "a[1]", "out of range"},
		"a name twice":   {`{"a":{"b":1,"b":2}}`, "a.b", "given twice"},
		"two values":     {`{} {}`, "", "goes on after its end"},
		"garbage after":  {`{}x`, "", "goes on after its end"},
		"a comment":      {"{} // done", "", "goes on after its end"},
		"a stray comma":  {`{"a":1,}`, "", "not JSON"},
		"a deep well":    {strings.Repeat("[", 40) + strings.Repeat("]", 40), strings.Repeat("[0]", 32), "nests deeper"},
		"too much":       {`"` + strings.Repeat("x", 2000) + `"`, "", "larger than 1000 bytes"},
		"too much space": {"{}" + strings.Repeat(" ", 2000), "", "larger than 1000 bytes"},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			_, err := strictjson.Read(strings.NewReader(c.text), 1000)
			var problem *engine.Problem
			require.ErrorAs(t, err, &problem)
			assert.Equal(t, c.where, problem.Where)
			assert.Contains(t, err.Error(), c.says)
			assert.NotContains(t, err.Error(), "\n")
		})
	}
}

// A body is said to be at fault in the words of the API, and parts of it are kept
// to the byte.
func TestBody(t *testing.T) {
	type body struct {
		V    int             `json:"v"`
		Kept json.RawMessage `json:"kept"`
	}
	var whole body
	require.NoError(t, strictjson.Body([]byte(` {"v":1,"kept":{"b": 1e2}} `), &whole))
	assert.Equal(t, body{V: 1, Kept: json.RawMessage(`{"b": 1e2}`)}, whole)
	for text, says := range map[string]string{
		``:                  "body is empty: send a JSON object",
		` `:                 "body is empty: send a JSON object",
		`{"v":1,`:           "body is cut short: nothing was stored, send the whole body again",
		`{"v":NaN}`:         "body is not JSON at byte 6: nothing was stored, send the whole body again",
		`{"v":"one"}`:       "v is a string: see server/httpapi/README.md; nothing was stored",
		`{"v":1,"extra":1}`: `body holds an unknown field "extra": take it out; nothing was stored`,
		`{"v":1}{}`:         "body goes on after its end, at byte 8: send one JSON object",
	} {
		assert.EqualError(t, strictjson.Body([]byte(text), new(body)), says, text)
	}
}

func TestReadPassesOnTheReadersOwnError(t *testing.T) {
	broken := errors.New("disk on fire")
	_, err := strictjson.Read(iotest.ErrReader(broken), 1000)
	require.ErrorIs(t, err, broken)
}
