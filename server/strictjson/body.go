package strictjson

import (
	"bytes"
	"encoding/json"
	"errors"
	"strings"

	"lintel/engine"
)

const sendAgain = "nothing was stored, send the whole body again"

// Body fills a struct from the body of a request, one JSON object. A name given
// twice is refused wherever it stands: what judged the one would store the other.
func Body(text []byte, into any) error {
	dec := json.NewDecoder(bytes.NewReader(text))
	dec.DisallowUnknownFields()
	if err := dec.Decode(into); err != nil {
		return bodyProblem(dec, err)
	}
	if what, found := more(dec); found {
		return engine.Bad("body", what, "send one JSON object")
	}
	if where, found := twice(text); found {
		return engine.Bad(where, "is given twice", "keep one of them; nothing was stored")
	}
	return nil
}

func bodyProblem(dec *json.Decoder, err error) error {
	var kind *json.UnmarshalTypeError
	if errors.As(err, &kind) {
		return engine.Bad(kind.Field, "is a "+kind.Value, "see server/httpapi/README.md; nothing was stored")
	}
	if field, ok := strings.CutPrefix(err.Error(), "json: unknown field "); ok {
		return engine.Bad("body", "holds an unknown field "+field, "take it out; nothing was stored")
	}
	switch what, _ := fault(dec, err); what {
	case "":
		return engine.Bad("body", "cannot be read", sendAgain)
	case empty:
		return engine.Bad("body", what, "send a JSON object")
	default:
		return engine.Bad("body", what, sendAgain)
	}
}
