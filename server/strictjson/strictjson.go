// Package strictjson reads JSON that a person or a device gave us into the plain
// tree that engine/shape takes. It is stricter than encoding/json alone: a name
// that stands twice in one object, anything after the value, nesting without
// end and a text beyond the limit are refused, each in one sentence.
package strictjson

import (
	"encoding/json"
	"errors"
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
	if err == nil {
		err = nothingMore(dec)
	}
	if bounded.N <= 0 {
		return nil, engine.Bad("", "is larger than "+strconv.FormatInt(limit, 10)+" bytes", "send less")
	}
	return tree, err
}

func nothingMore(dec *json.Decoder) error {
	_, err := dec.Token()
	if errors.Is(err, io.EOF) {
		return nil
	}
	return engine.Bad("", "goes on after its end, at byte "+strconv.FormatInt(dec.InputOffset(), 10), "keep one JSON value to a file")
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
	var bad *json.SyntaxError
	at := "is not JSON at byte " + strconv.FormatInt(dec.InputOffset(), 10)
	switch {
	case err == nil:
		return nil
	case errors.Is(err, io.EOF) && dec.InputOffset() == 0:
		return engine.Bad("", "is empty", "give one JSON object")
	case errors.Is(err, io.EOF), errors.Is(err, io.ErrUnexpectedEOF):
		return engine.Bad("", "ends too early, at byte "+strconv.FormatInt(dec.InputOffset(), 10), "give the whole of it")
	case errors.As(err, &bad):
		return engine.Bad("", at, "mend the "+bad.Error())
	}
	return err
}
