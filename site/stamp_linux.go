package site

import (
	"io/fs"
	"syscall"
)

// stamp gives the number of a file on its disk and when anything of it was changed last, nanoseconds since 1970. A program
// that sets the time of a file back cannot set that one.
func stamp(info fs.FileInfo) (number, changed int64) {
	s, ok := info.Sys().(*syscall.Stat_t)
	if !ok {
		return 0, 0
	}
	return int64(s.Ino), s.Ctim.Nano()
}
