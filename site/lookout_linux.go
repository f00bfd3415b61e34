package site

import (
	"io/fs"
	"os"

	"golang.org/x/sys/unix"
)

// lookFrom opens a folder. A link to one is none.
func lookFrom(dir string) (lookout, error) {
	at, err := unix.Open(dir, unix.O_RDONLY|unix.O_DIRECTORY|unix.O_NOFOLLOW|unix.O_CLOEXEC, 0)
	for err == unix.EINTR { // on a disk of another machine
		at, err = unix.Open(dir, unix.O_RDONLY|unix.O_DIRECTORY|unix.O_NOFOLLOW|unix.O_CLOEXEC, 0)
	}
	if err != nil {
		return lookout{}, &fs.PathError{Op: "open", Path: dir, Err: err}
	}
	return lookout{os.NewFile(uintptr(at), dir)}, nil
}

// see looks at a file by its name in the folder, which may lead into folders below. A link is not followed.
func (l lookout) see(name string) (sight, error) {
	var is unix.Stat_t
	if err := unix.Fstatat(int(l.at.Fd()), name, &is, unix.AT_SYMLINK_NOFOLLOW); err != nil {
		return sight{}, &fs.PathError{Op: "lstat", Path: l.at.Name() + "/" + name, Err: err}
	}
	return sight{kindOf(is.Mode), is.Size, is.Mtim.Nano(), int64(is.Ino), is.Ctim.Nano()}, nil
}

// kindOf gives the kind of a file as the language names it.
func kindOf(mode uint32) fs.FileMode {
	switch mode & unix.S_IFMT {
	case unix.S_IFREG:
		return 0
	case unix.S_IFDIR:
		return fs.ModeDir
	case unix.S_IFLNK:
		return fs.ModeSymlink
	case unix.S_IFIFO:
		return fs.ModeNamedPipe
	case unix.S_IFSOCK:
		return fs.ModeSocket
	case unix.S_IFCHR:
		return fs.ModeDevice | fs.ModeCharDevice
	case unix.S_IFBLK:
		return fs.ModeDevice
	}
	return fs.ModeIrregular
}
