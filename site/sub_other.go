//go:build !linux

package site

import "os"

// sub is a folder of output, or one below it, in which files are made.
type sub struct{ root *os.Root }

// openSub opens a folder below another, which no link leads out of.
func openSub(root *os.Root, name string) (sub, error) {
	below, err := root.OpenRoot(name)
	return sub{below}, err
}

func (s sub) close() error { return s.root.Close() }

// create makes a file that is not there yet.
func (s sub) create(name string) (*os.File, error) {
	return s.root.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
}

// put makes a file that is not there yet, with all that is in it.
func (s sub) put(name string, data []byte) error {
	to, err := s.create(name)
	if err != nil {
		return err
	}
	_, err = to.Write(data)
	if closing := to.Close(); err == nil {
		err = closing
	}
	return err
}
