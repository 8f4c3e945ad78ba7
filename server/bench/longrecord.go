package bench

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
)

// reached is how far a long run came, for what was under test then.
type reached struct {
	Stamp  string `json:"stamp"`
	Rounds uint64 `json:"rounds"`
	Date   string `json:"date"`
	Fault  string `json:"fault,omitempty"`
}

// recordFile is kept in the checkout, so that a figure states a count that
// others can see and go on with.
func recordFile() (string, error) {
	long, err := inCheckout(filepath.Join(".ci", "long"))
	return long + ".json", err
}

func recallAll() (map[string]reached, error) {
	all := map[string]reached{}
	path, err := recordFile()
	if err != nil {
		return nil, err
	}
	text, err := os.ReadFile(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return all, nil
	case err != nil:
		return nil, err
	}
	return all, json.Unmarshal(text, &all)
}

// recall returns how far a figure's run came, or nothing where what it tests
// has changed since.
func recall(name, stamp string) (reached, error) {
	all, err := recallAll()
	if r := all[name]; r.Stamp == stamp {
		return r, err
	}
	return reached{Stamp: stamp}, err
}

// note keeps it, whole or not at all.
func note(name string, r reached) error {
	all, err := recallAll()
	if err != nil {
		return err
	}
	all[name] = r
	text, err := json.MarshalIndent(all, "", "  ")
	if err != nil {
		return err
	}
	path, err := recordFile()
	if err != nil {
		return err
	}
	if err := os.WriteFile(path+".new", append(text, '\n'), 0o644); err != nil {
		return err
	}
	return os.Rename(path+".new", path)
}

// stampOf is a digest of files of the checkout.
func stampOf(paths ...string) func() (string, error) {
	return func() (string, error) {
		sum := sha256.New()
		for _, path := range paths {
			full, err := inCheckout(path)
			if err != nil {
				return "", err
			}
			text, err := os.ReadFile(full)
			if err != nil {
				return "", err
			}
			sum.Write(text)
		}
		return hex.EncodeToString(sum.Sum(nil)[:8]), nil
	}
}
