//go:build unix

package site

import (
	"errors"
	"os"

	"golang.org/x/sys/unix"
)

// hold takes the lock on an open file without waiting. The system lets go of it when the process ends, however it ends.
func hold(f *os.File) (held bool, err error) {
	err = unix.Flock(int(f.Fd()), unix.LOCK_EX|unix.LOCK_NB)
	if errors.Is(err, unix.EWOULDBLOCK) {
		return false, nil
	}
	return err == nil, err
}
