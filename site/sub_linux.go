package site

import (
	"io/fs"
	"os"
	"path/filepath"
	"syscall"
)

// sub is a folder of output, or one below it, in which files are made. They are made by the calls of the system alone: a file
// of the language is asked whether one can wait for it and is watched until it is closed, and a book has hundreds of small ones.
type sub struct{ dir *os.File }

// openSub opens a folder below another, which no link leads out of.
func openSub(root *os.Root, name string) (sub, error) {
	dir, err := root.Open(name)
	return sub{dir}, err
}

func (s sub) close() error { return s.dir.Close() }

// create makes a file that is not there yet. The name has no stroke in it.
func (s sub) create(name string) (*os.File, error) {
	fd, err := s.open(name)
	if err != nil {
		return nil, err
	}
	return os.NewFile(uintptr(fd), s.path(name)), nil
}

// put makes a file that is not there yet, with all that is in it.
func (s sub) put(name string, data []byte) error {
	fd, err := s.open(name)
	if err != nil {
		return err
	}
	for len(data) > 0 && err == nil {
		var n int
		if n, err = syscall.Write(fd, data); err == syscall.EINTR {
			n, err = 0, nil
		}
		data = data[max(n, 0):]
	}
	if closing := syscall.Close(fd); err == nil {
		err = closing
	}
	if err != nil {
		return &fs.PathError{Op: "write", Path: s.path(name), Err: err}
	}
	return nil
}

func (s sub) open(name string) (fd int, err error) {
	for {
		const flags = syscall.O_WRONLY | syscall.O_CREAT | syscall.O_EXCL | syscall.O_NOFOLLOW | syscall.O_CLOEXEC | syscall.O_LARGEFILE
		fd, err = syscall.Openat(int(s.dir.Fd()), name, flags, 0o644)
		switch err {
		case nil:
			return fd, nil
		case syscall.EINTR:
			continue
		}
		return -1, &fs.PathError{Op: "openat", Path: name, Err: err}
	}
}

func (s sub) path(name string) string { return filepath.Join(s.dir.Name(), name) }
