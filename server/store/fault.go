package store

import (
	"errors"
	"io/fs"
	"strings"
	"syscall"

	bolterrors "go.etcd.io/bbolt/errors"

	"lintel/quiz"
)

// isRefusal reports whether a job said no, having written nothing.
func isRefusal(err error) bool {
	for _, refusal := range []error{quiz.ErrUnknownDevice, quiz.ErrWrongSecret, quiz.ErrGap, quiz.ErrForked, quiz.ErrManyDevices, quiz.ErrNoDoc, quiz.ErrStale} {
		if errors.Is(err, refusal) {
			return true
		}
	}
	return false
}

// isFull reports whether a commit failed for want of room, and before anything
// of it could count. A failed sync is not that: what it leaves on the disk is in
// doubt, whatever the reason. On Linux it comes back from bbolt as the bare
// number, elsewhere as the operation "sync".
func isFull(err error) bool {
	_, bare := err.(syscall.Errno)
	var path *fs.PathError
	synced := bare || errors.As(err, &path) && path.Op == "sync"
	return noRoom(err) && !synced
}

// noRoom reports whether the disk, a quota or a limit on the size of files is
// used up.
func noRoom(err error) bool {
	if errors.Is(err, bolterrors.ErrMaxSizeReached) {
		return true
	}
	// bbolt hands on the text of a failed resize or copy, not the error itself.
	text := strings.HasPrefix(err.Error(), "file resize error: ") || strings.HasPrefix(err.Error(), "meta ")
	for _, full := range []syscall.Errno{syscall.ENOSPC, syscall.EDQUOT, syscall.EFBIG} {
		if errors.Is(err, full) || text && strings.HasSuffix(err.Error(), full.Error()) {
			return true
		}
	}
	return false
}
