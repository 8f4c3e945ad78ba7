package store

import (
	"bytes"
	"crypto/sha256"
	"crypto/subtle"
	"encoding/hex"
	"encoding/json"

	bolt "go.etcd.io/bbolt"

	"lintel/quiz"
)

// Register adds a device or changes the call sign of one that knows its secret.
func (s *Store) Register(device, secret, callSign string) (quiz.Device, error) {
	return s.register(device, secret, callSign, s.maxDevices-s.maxDevices/keptShare)
}

// Welcome is Register with the room that is kept for classes.
func (s *Store) Welcome(device, secret, callSign string) (quiz.Device, error) {
	return s.register(device, secret, callSign, s.maxDevices)
}

// keptShare: one part in five of the room for devices is kept for those who join
// a class (chosen by us: four of the largest classes).
const keptShare = 5

func (s *Store) register(device, secret, callSign string, most uint64) (quiz.Device, error) {
	key, err := idKey(device)
	if err != nil {
		return quiz.Device{}, err
	}
	row := deviceRow{CallSign: callSign, CreatedMS: s.now().UnixMilli(), Secret: digest(secret)}
	err = s.writer.do(func(tx *bolt.Tx) error {
		bucket := tx.Bucket(deviceBucket)
		if text := bucket.Get(key); text != nil {
			return rename(bucket, key, text, &row)
		}
		// The bucket's own counter is the number of devices: Erase counts back.
		if bucket.Sequence() >= most {
			return quiz.ErrManyDevices
		}
		if _, err := bucket.NextSequence(); err != nil {
			return err
		}
		return put(bucket, key, row)
	})
	if err != nil {
		return quiz.Device{}, err
	}
	return row.device(device), nil
}

// rename gives a known device the call sign in row, and row the rest of what
// is known.
func rename(bucket *bolt.Bucket, key, text []byte, row *deviceRow) error {
	var known deviceRow
	if err := json.Unmarshal(text, &known); err != nil {
		return err
	}
	if !sameSecret(known.Secret, row.Secret) {
		return quiz.ErrWrongSecret
	}
	row.CreatedMS = known.CreatedMS
	if known.CallSign == row.CallSign {
		return nil
	}
	return put(bucket, key, *row)
}

// Authenticate returns the device whose secret this is.
func (s *Store) Authenticate(device, secret string) (quiz.Device, error) {
	given := digest(secret)
	row, err := s.deviceRow(device)
	// An unknown device is compared too, so that the time taken does not tell
	// which ids exist.
	same := sameSecret(row.Secret, given)
	switch {
	case err != nil:
		return quiz.Device{}, err
	case !same:
		return quiz.Device{}, quiz.ErrWrongSecret
	}
	return row.device(device), nil
}

// Devices returns devices in order of id.
func (s *Store) Devices(after string, limit int) ([]quiz.Device, error) {
	var from []byte
	if after != "" {
		key, err := idKey(after)
		if err != nil {
			return nil, err
		}
		from = key
	}
	var devices []quiz.Device
	err := s.db.View(func(tx *bolt.Tx) error {
		cursor := tx.Bucket(deviceBucket).Cursor()
		key, text := cursor.Seek(from)
		if from != nil && bytes.Equal(key, from) {
			key, text = cursor.Next()
		}
		for ; key != nil && len(devices) < limit; key, text = cursor.Next() {
			var row deviceRow
			if err := json.Unmarshal(text, &row); err != nil {
				return err
			}
			devices = append(devices, row.device(hex.EncodeToString(key)))
		}
		return nil
	})
	return devices, err
}

func (s *Store) deviceRow(device string) (deviceRow, error) {
	var row deviceRow
	key, err := idKey(device)
	if err != nil {
		return row, quiz.ErrUnknownDevice
	}
	err = s.db.View(func(tx *bolt.Tx) error {
		row, err = readDevice(tx.Bucket(deviceBucket).Get(key))
		return err
	})
	return row, err
}

func readDevice(text []byte) (row deviceRow, err error) {
	if text == nil {
		return row, quiz.ErrUnknownDevice
	}
	return row, json.Unmarshal(text, &row)
}

func (r deviceRow) device(id string) quiz.Device {
	return quiz.Device{ID: id, CallSign: r.CallSign, CreatedMS: r.CreatedMS}
}

func digest(secret string) string {
	sum := sha256.Sum256([]byte(secret))
	return hex.EncodeToString(sum[:])
}

func sameSecret(kept, given string) bool {
	if kept == "" {
		kept = digest("no such device")
	}
	return subtle.ConstantTimeCompare([]byte(kept), []byte(given)) == 1
}
