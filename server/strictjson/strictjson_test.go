package strictjson_test

import (
	"encoding/json"
	"errors"
	"math/rand/v2"
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
		`{"v":1,"v":1}`:     "v is given twice: keep one of them; nothing was stored",
	} {
		assert.EqualError(t, strictjson.Body([]byte(text), new(body)), says, text)
	}
}

func TestReadPassesOnTheReadersOwnError(t *testing.T) {
	broken := errors.New("disk on fire")
	_, err := strictjson.Read(iotest.ErrReader(broken), 1000)
	require.ErrorIs(t, err, broken)
}

// A name twice is found at any depth and in whatever spelling, also in the parts that
// are kept as they came; the same name in two objects is not twice, nor is one in two
// cases.
func TestBodyRefusesANameGivenTwice(t *testing.T) {
	type body struct {
		V    int             `json:"v"`
		Kept json.RawMessage `json:"kept"`
	}
	for text, where := range map[string]string{
		`{"v":1,"\u0076":2}`:                            "v",
		`{"kept":{"a":[0,{"b":1},{"c":1,"c":2}]}}`:      "kept.a[2].c",
		`{"kept":{"a":{"x":{}},"b":"\",\"a\":","a":1}}`: "kept.a",
		"{\"v\" \n:1,\"v\":1}":                          "v",
	} {
		var problem *engine.Problem
		require.ErrorAs(t, strictjson.Body([]byte(text), new(body)), &problem, text)
		assert.Equal(t, where, problem.Where, text)
		assert.Equal(t, "is given twice", problem.What, text)
	}
	for _, text := range []string{
		`{"v":1,"kept":{"v":1,"a":{"v":1},"b":[{"v":1},{"v":1}]}}`,
		`{"v":1,"kept":["a","a",":","\"a\":","\\"]}`,
		`{"v":1,"kept":{"":1," ":1,"a":"a","b":"a","A":1}}`,
	} {
		assert.NoError(t, strictjson.Body([]byte(text), new(body)), text)
	}
}

// The reader of files takes every text apart by encoding/json: of random texts the
// two find the same name twice, or none.
func TestBodyFindsTheNameThatReadFinds(t *testing.T) {
	dice := rand.New(rand.NewPCG(1, 2))
	twice := 0
	for range 2000 {
		text := random(dice, 0)
		_, read := strictjson.Read(strings.NewReader(text), 1<<20)
		var into any
		body := strictjson.Body([]byte(text), &into)
		if read == nil {
			assert.NoError(t, body, text)
			continue
		}
		twice++
		var said, found *engine.Problem
		require.ErrorAs(t, read, &said)
		require.ErrorAs(t, body, &found, text)
		assert.Equal(t, said.Where, found.Where, text)
	}
	assert.Greater(t, twice, 200)
	assert.Less(t, twice, 1800)
}

// random is a JSON value whose names are few and awkward.
func random(dice *rand.Rand, depth int) string {
	words := []string{`"a"`, `"b"`, `"\""`, `"\\"`, `"a\":"`, `"{"`, `"[,"`, `""`}
	word := func() string { return words[dice.IntN(len(words))] }
	parts := make([]string, dice.IntN(4))
	switch kind := dice.IntN(4); {
	case depth == 0 || kind < 2 && depth < 4:
		for i := range parts {
			parts[i] = word() + " :" + random(dice, depth+1)
		}
		return "{" + strings.Join(parts, ", ") + "}"
	case kind == 2 && depth < 4:
		for i := range parts {
			parts[i] = random(dice, depth+1)
		}
		return "[" + strings.Join(parts, ",") + "]"
	}
	return word()
}
