package store

import (
	"errors"
	"syscall"

	bolterrors "go.etcd.io/bbolt/errors"

	"lintel/quiz"
)

// isRefusal reports whether a job said no, having written nothing.
func isRefusal(err error) bool {
	for _, refusal := range []error{quiz.ErrUnknownDevice, quiz.ErrWrongSecret, quiz.ErrGap, quiz.ErrForked, quiz.ErrManyDevices} {
		if errors.Is(err, refusal) {
			return true
		}
	}
	return false
}

// isFull reports whether there was no room: on the disk, within a quota or
// within a limit on the file's size.
func isFull(err error) bool {
	for _, full := range []error{syscall.ENOSPC, syscall.EDQUOT, syscall.EFBIG, bolterrors.ErrMaxSizeReached} {
		if errors.Is(err, full) {
			return true
		}
	}
	return false
}
