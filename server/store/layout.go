package store

import (
	"bytes"
	"encoding/binary"
	"encoding/hex"
	"encoding/json"
	"errors"

	bolt "go.etcd.io/bbolt"

	"lintel/quiz"
)

// Schema is the version of the file's layout that this program writes. A file
// of a later one is refused untouched.
const Schema = 2

const appName = "lintel store"

var (
	metaBucket    = []byte("meta")
	deviceBucket  = []byte("devices")
	eventBucket   = []byte("events")
	idBucket      = []byte("ids")
	waitingBucket = []byte("waiting")
	checkBucket   = []byte("checks")

	lineBucket = []byte("lines")
	deedBucket = []byte("deeds")

	// bySchema are the buckets that each version of the layout brought.
	bySchema = [][][]byte{
		1: {metaBucket, deviceBucket, eventBucket, idBucket, waitingBucket, checkBucket},
		2: append(docBuckets(), lineBucket, deedBucket),
	}

	appKey    = []byte("app")
	schemaKey = []byte("schema")

	// present stands where only the key matters: an empty value reads back as
	// nil within the transaction that wrote it, as if it were absent.
	present = []byte{1}
)

const (
	idLen  = 16
	seqLen = 8
)

// deviceRow is a device as kept: the secret only as its SHA-256. The secret is
// 256 random bits, so a plain digest cannot be guessed backwards and a slow
// pass-phrase hash would buy nothing.
type deviceRow struct {
	CallSign  string `json:"call_sign"`
	CreatedMS int64  `json:"created_ms"`
	Secret    string `json:"secret_sha256"`
}

// eventRow is an event as kept, with the server's time beside it.
type eventRow struct {
	quiz.Event
	ReceivedMS int64 `json:"received_ms"`
}

var errNotID = errors.New("store: id is not 32 digits of hex")

// idKey is the 16 bytes of a device id, or of another id that is spelled as one. In
// capitals it would be a second name of the same device.
func idKey(device string) ([]byte, error) {
	if !quiz.IsDeviceID(device) {
		return nil, errNotID
	}
	return hex.DecodeString(device)
}

// eventKey is a device's key with a sequence number after it.
func eventKey(device []byte, seq uint64) []byte {
	key := make([]byte, 0, idLen+seqLen)
	return binary.BigEndian.AppendUint64(append(key, device...), seq)
}

// splitKey is the reverse of eventKey.
func splitKey(key []byte) (device string, seq uint64, ok bool) {
	if len(key) != idLen+seqLen {
		return "", 0, false
	}
	return hex.EncodeToString(key[:idLen]), binary.BigEndian.Uint64(key[idLen:]), true
}

// lastSeq is the number of a device's last event, 0 when it has none. As the
// sequence is gap-free it is also how many there are.
func lastSeq(tx *bolt.Tx, device []byte) uint64 { return lastOf(tx, eventBucket, device) }

// lastOf is the last number under an id in a bucket, 0 when there is none.
func lastOf(tx *bolt.Tx, name, device []byte) uint64 {
	cursor := tx.Bucket(name).Cursor()
	key, _ := cursor.Seek(eventKey(device, ^uint64(0)))
	if key == nil {
		key, _ = cursor.Last()
	} else {
		key, _ = cursor.Prev()
	}
	if !bytes.HasPrefix(key, device) {
		return 0
	}
	return binary.BigEndian.Uint64(key[idLen:])
}

// put writes a value as JSON.
func put(bucket *bolt.Bucket, key []byte, value any) error {
	text, err := encode(value)
	if err != nil {
		return err
	}
	return bucket.Put(key, text)
}

// encode spells a value as JSON, with text as the device spelled it.
func encode(value any) ([]byte, error) {
	var text bytes.Buffer
	encoder := json.NewEncoder(&text)
	encoder.SetEscapeHTML(false)
	err := encoder.Encode(value)
	return bytes.TrimSuffix(text.Bytes(), []byte("\n")), err
}
