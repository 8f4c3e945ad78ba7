package live

import (
	"encoding/json"
	"errors"

	"lintel/quiz"
)

// The kinds of frame that the server pushes.
const (
	kindAcked   = "acked"
	kindVersion = "version"
)

func ackedFrame(seq uint64) []byte {
	return frame(struct {
		Kind string `json:"kind"`
		Seq  uint64 `json:"seq"`
	}{kindAcked, seq})
}

func versionFrame(v Version) []byte {
	return frame(struct {
		Kind    string `json:"kind"`
		Engine  string `json:"engine"`
		Content string `json:"content"`
	}{kindVersion, v.Engine, v.Content})
}

// frame encodes strings and integers only, which cannot fail.
func frame(v any) []byte {
	text, err := json.Marshal(v)
	if err != nil {
		panic("live: " + err.Error())
	}
	return text
}

// hello reads the first frame and returns the device that it proves.
func (h *Hub) hello(s *socket) (device string, err error) {
	var claim struct {
		Device string `json:"device"`
		Secret string `json:"secret"`
	}
	if !s.first(&claim) {
		return "", errHello
	}
	known, err := h.store.Authenticate(claim.Device, claim.Secret)
	switch {
	case errors.Is(err, quiz.ErrUnknownDevice), errors.Is(err, quiz.ErrWrongSecret):
		// One sentence for both, so that nobody learns which ids exist.
		h.log.Warn("socket refused", "why", err)
		return "", quiz.ErrWrongSecret
	case err != nil:
		h.log.Error("socket not checked", "err", err)
		return "", errStopping
	}
	return known.ID, nil
}
