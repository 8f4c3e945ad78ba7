package strictjson

import (
	"encoding/json"
	"errors"
	"io"
	"strconv"
)

const empty = "is empty"

// fault says what is wrong with a text that could not be decoded, and what broke
// its syntax; nothing where the error is of another kind.
func fault(dec *json.Decoder, err error) (what string, bad *json.SyntaxError) {
	switch {
	case errors.Is(err, io.EOF) && dec.InputOffset() == 0:
		return empty, nil
	case errors.Is(err, io.EOF), errors.Is(err, io.ErrUnexpectedEOF):
		return "is cut short", nil
	case errors.As(err, &bad):
		return "is not JSON at byte " + strconv.FormatInt(bad.Offset, 10), bad
	}
	return "", nil
}

// more says whether anything but space follows what was decoded, and where it was.
func more(dec *json.Decoder) (what string, found bool) {
	_, err := dec.Token()
	return "goes on after its end, at byte " + strconv.FormatInt(dec.InputOffset(), 10), !errors.Is(err, io.EOF)
}
