package store

import (
	"errors"
	"io/fs"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
	bolterrors "go.etcd.io/bbolt/errors"
)

func TestWhichFailuresAreWantOfRoom(t *testing.T) {
	for _, full := range []error{
		bolterrors.ErrMaxSizeReached,
		&fs.PathError{Op: "write", Path: "x", Err: syscall.ENOSPC},
		&fs.PathError{Op: "write", Path: "x", Err: syscall.EDQUOT},
		errors.New("file resize error: truncate x: " + syscall.EFBIG.Error()),
		errors.New("meta 0 copy: write x: " + syscall.ENOSPC.Error()),
	} {
		assert.True(t, isFull(full), full)
	}
	for _, doubt := range []error{
		syscall.ENOSPC, // a bare number is a failed fdatasync
		&fs.PathError{Op: "sync", Path: "x", Err: syscall.ENOSPC},
		&fs.PathError{Op: "write", Path: "x", Err: syscall.EIO},
		errors.New("file resize error: truncate x: " + syscall.EIO.Error()),
	} {
		assert.False(t, isFull(doubt), doubt)
	}
}
