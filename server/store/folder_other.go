//go:build !windows

package store

import (
	"errors"
	"os"
)

// syncFolder makes a new name in a folder outlast a power cut.
func syncFolder(path string) error {
	folder, err := os.Open(path)
	if err != nil {
		return err
	}
	return errors.Join(folder.Sync(), folder.Close())
}
