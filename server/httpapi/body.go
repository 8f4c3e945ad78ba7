package httpapi

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"strconv"
	"strings"

	"github.com/gofiber/fiber/v2"

	"lintel/engine"
)

const sendAgain = "nothing was stored, send the whole body again"

// read decodes the body strictly. It works on the bytes as they came: fiber's
// own c.Body would unpack them first.
func read(c *fiber.Ctx, into any) error {
	strict := json.NewDecoder(bytes.NewReader(c.Request().Body()))
	strict.DisallowUnknownFields()
	if err := strict.Decode(into); err != nil {
		return bodyProblem(err)
	}
	if _, err := strict.Token(); !errors.Is(err, io.EOF) {
		return engine.Bad("body", "goes on after its end", "send one JSON object")
	}
	return nil
}

func bodyProblem(err error) error {
	var syntax *json.SyntaxError
	var kind *json.UnmarshalTypeError
	switch {
	case errors.Is(err, io.EOF):
		return engine.Bad("body", "is empty", "send a JSON object")
	case errors.Is(err, io.ErrUnexpectedEOF):
		return engine.Bad("body", "is cut short", sendAgain)
	case errors.As(err, &syntax):
		return engine.Bad("body", "is not JSON at byte "+strconv.FormatInt(syntax.Offset, 10), sendAgain)
	case errors.As(err, &kind):
		return engine.Bad(kind.Field, "is a "+kind.Value, "see server/httpapi/README.md; nothing was stored")
	}
	if field, ok := strings.CutPrefix(err.Error(), "json: unknown field "); ok {
		return engine.Bad("body", "holds an unknown field "+field, "take it out; nothing was stored")
	}
	return engine.Bad("body", "cannot be read", sendAgain)
}
