package desk

import (
	"time"

	"lintel/engine"
	"lintel/quiz"
)

// moveTime is how long a token that moves a device lasts (the design's figure).
const moveTime = 60 * time.Second

// move is a device about to get another secret. It is kept in memory only: it
// outlives neither a minute nor the server.
type move struct {
	device string
	until  time.Time
}

// MoveCode makes the one-time token by which another phone takes over a device's
// identity; older ones of the device die.
func (d *Desk) MoveCode(device string) (token string, untilMS int64) {
	d.mu.Lock()
	defer d.mu.Unlock()
	now := d.now()
	for held, m := range d.moves {
		if m.device == device || now.After(m.until) {
			delete(d.moves, held)
		}
	}
	token = Secret(16)
	d.moves[digest(token)] = move{device: device, until: now.Add(moveTime)}
	return token, now.Add(moveTime).UnixMilli()
}

// Move gives a device the secret of the phone that holds its token. The phone
// that had it is signed out.
func (d *Desk) Move(token, newSecret string) (quiz.Device, uint64, error) {
	if !quiz.IsSecret(newSecret) {
		return quiz.Device{}, 0, engine.Bad("secret", "is not 256 bits of lower-case hex", "make 32 random bytes and spell them as 64 digits")
	}
	d.mu.Lock()
	m, ok := d.moves[digest(token)]
	delete(d.moves, digest(token))
	d.mu.Unlock()
	if !ok || d.now().After(m.until) {
		return quiz.Device{}, 0, ErrWrongCode
	}
	device, err := d.store.Rekey(m.device, newSecret)
	if err != nil {
		return quiz.Device{}, 0, err
	}
	acked, err := d.store.Acked(device.ID)
	return device, acked, err
}
