//go:build linux || darwin

package store

import "syscall"

// freeBytes is what the disk of a folder has left for this user.
var freeBytes = func(folder string) (free uint64, known bool) {
	var disk syscall.Statfs_t
	if syscall.Statfs(folder, &disk) != nil {
		return 0, false
	}
	return disk.Bavail * uint64(disk.Bsize), true
}
