//go:build linux || darwin

package store

import (
	"os"
	"syscall"
)

// share holds a file until it is closed, or its process is gone.
func share(file *os.File) error { return syscall.Flock(int(file.Fd()), syscall.LOCK_SH) }

// abandoned reports whether nobody holds a file, and holds it if so.
func abandoned(file *os.File) bool {
	return syscall.Flock(int(file.Fd()), syscall.LOCK_EX|syscall.LOCK_NB) == nil
}
