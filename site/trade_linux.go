package site

import "golang.org/x/sys/unix"

// trade lets two names change places in one step, so that neither is ever missing.
func trade(a, b string) error {
	return unix.Renameat2(unix.AT_FDCWD, a, unix.AT_FDCWD, b, unix.RENAME_EXCHANGE)
}
