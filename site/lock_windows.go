package site

import (
	"errors"
	"os"

	"golang.org/x/sys/windows"
)

// hold takes the lock on an open file without waiting. The system lets go of it when the process ends, however it ends.
func hold(f *os.File) (held bool, err error) {
	err = windows.LockFileEx(windows.Handle(f.Fd()), windows.LOCKFILE_EXCLUSIVE_LOCK|windows.LOCKFILE_FAIL_IMMEDIATELY, 0, 1, 0, new(windows.Overlapped))
	if errors.Is(err, windows.ERROR_LOCK_VIOLATION) {
		return false, nil
	}
	return err == nil, err
}
