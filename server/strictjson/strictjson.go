// Package strictjson reads JSON that a person or a device gave us, more strictly
// than encoding/json alone, and says in one sentence what is wrong with it. Read
// makes the plain tree that engine/shape takes: a name that stands twice in one
// object, anything after the value, nesting without end and a text beyond the
// limit are refused. Body fills a struct from what a device sent, and may keep parts
// of it as the bytes that came: unknown fields, a name given twice and anything
// after the object are refused.
package strictjson

import (
	"encoding/json"
	"io"
	"math"
	"strconv"

	"lintel/engine"
)

// deepest is how far a value may nest; our own shapes need eight levels.
const deepest = 32

// Read returns the one JSON value in r, of at most limit bytes. It never holds
// more than that. The error is an *engine.Problem, or what r itself returned.
func Read(r io.Reader, limit int64) (any, error) {
	bounded := &io.LimitedReader{R: r, N: limit + 1}
	dec := json.NewDecoder(bounded)
	dec.UseNumber()
	tree, err := value(dec, "", 0)
	if what, found := more(dec); err == nil && found {
		err = engine.Bad("", what, "keep one JSON value to a file")
	}
	if bounded.N <= 0 {
		return nil, engine.Bad("", "is larger than "+strconv.FormatInt(limit, 10)+" bytes", "send less")
	}
	return tree, err
}

func value(dec *json.Decoder, path string, depth int) (any, error) {
	token, err := dec.Token()
	if err != nil {
		return nil, syntax(dec, err)
	}
	switch token := token.(type) {
	case json.Delim:
		if depth >= deepest {
			return nil, engine.Bad(path, "nests deeper than "+strconv.Itoa(deepest)+" levels", "flatten it")
		}
		if token == '{' {
			return object(dec, path, depth+1)
		}
		return list(dec, path, depth+1)
	case json.Number:
		return number(path, token)
	}
	return token, nil
}

func object(dec *json.Decoder, path string, depth int) (any, error) {
	tree := map[string]any{}
	for dec.More() {
		token, err := dec.Token()
		if err != nil {
			return nil, syntax(dec, err)
		}
		name := token.(string) // encoding/json lets nothing else be a name
		at := name
		if path != "" {
			at = path + "." + name
		}
		if _, twice := tree[name]; twice {
			return nil, engine.Bad(at, "is given twice", "keep one of them")
		}
		if tree[name], err = value(dec, at, depth); err != nil {
			return nil, err
		}
	}
	_, err := dec.Token() // the closing brace
	return tree, syntax(dec, err)
}

func list(dec *json.Decoder, path string, depth int) (any, error) {
	items := []any{}
	for dec.More() {
		item, err := value(dec, path+"["+strconv.Itoa(len(items))+"]", depth)
		if err != nil {
			return nil, err
		}
		items = append(items, item)
	}
	_, err := dec.Token() // the closing bracket
	return items, syntax(dec, err)
}

func number(path string, n json.Number) (any, error) {
	x, err := n.Float64()
	if err != nil || math.IsInf(x, 0) {
		return nil, engine.Bad(path, "is a number out of range", "give a number that a 64-bit float can hold")
	}
	return x, nil
}

// syntax words a decoding error for a person. Other errors pass unchanged.
func syntax(dec *json.Decoder, err error) error {
	what, bad := fault(dec, err)
	switch {
	case err == nil || what == "":
		return err
	case bad != nil:
		return engine.Bad("", what, "mend the "+bad.Error())
	case what == empty:
		return engine.Bad("", what, "give one JSON object")
	}
	return engine.Bad("", what, "give the whole of it")
}
