package live

import (
	"bytes"
	"encoding/json"
	"errors"
	"time"

	"github.com/gorilla/websocket"

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
	s.ws.SetReadLimit(h.limits.Frame)
	if err := s.ws.SetReadDeadline(time.Now().Add(h.limits.Hello)); err != nil {
		return "", err
	}
	kind, text, err := s.ws.ReadMessage()
	if err != nil || kind != websocket.TextMessage {
		return "", errHello
	}
	var claim struct {
		Device string `json:"device"`
		Secret string `json:"secret"`
	}
	strict := json.NewDecoder(bytes.NewReader(text))
	strict.DisallowUnknownFields()
	if err := strict.Decode(&claim); err != nil || strict.More() {
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
