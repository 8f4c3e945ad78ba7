package store

import (
	"errors"
	"os"
	"path/filepath"
	"regexp"
)

// A half is a file that is being written beside the one it will become. Its writer
// holds a shared lock on it for as long as it is one: what nobody holds was left by a
// process that was killed, and may be swept away. (bbolt's reader, which walks it
// through before it gets its name, takes a shared lock too.)
type half struct{ file *os.File }

const halfPattern = ".half-*"

// halfName is what os.CreateTemp makes of the pattern: nothing else is ever swept.
var halfName = regexp.MustCompile(`^\.half-[0-9]+$`)

func newHalf(folder string) (*half, error) {
	for {
		file, err := os.CreateTemp(folder, halfPattern)
		if err != nil {
			return nil, err
		}
		h := &half{file}
		if err := share(file); err != nil {
			h.drop()
			return nil, err
		}
		if h.stands() {
			return h, nil
		}
		file.Close() // swept by another between its making and its lock
	}
}

func (h *half) path() string { return h.file.Name() }

// stands reports whether the file still has its name.
func (h *half) stands() bool {
	named, err := os.Stat(h.path())
	if err != nil {
		return false
	}
	held, err := h.file.Stat()
	return err == nil && os.SameFile(named, held)
}

// drop ends a half: under its own name it is no longer wanted.
func (h *half) drop() {
	h.file.Close()
	os.Remove(h.path())
}

// Sweep removes from a folder the halves that killed processes left, and says which.
// One that is being written stays, and so does any other file.
func Sweep(folder string) (removed []string, err error) {
	entries, err := os.ReadDir(folder)
	if errors.Is(err, os.ErrNotExist) {
		return nil, nil // whoever writes there says it better
	}
	for _, entry := range entries {
		if !halfName.MatchString(entry.Name()) || !entry.Type().IsRegular() {
			continue
		}
		gone, failed := sweep(filepath.Join(folder, entry.Name()))
		if gone {
			removed = append(removed, entry.Name())
		}
		err = errors.Join(err, failed)
	}
	return removed, err
}

func sweep(path string) (gone bool, err error) {
	file, err := os.Open(path)
	if err != nil {
		return false, err
	}
	defer file.Close()
	if !abandoned(file) {
		return false, nil
	}
	if err := os.Remove(path); err != nil {
		return false, err
	}
	return true, nil
}
